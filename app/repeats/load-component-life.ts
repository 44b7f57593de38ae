import type { AddressValues } from "@/app/_address/address-reader";
import type { Reader } from "@/db/database-types";
import { loadExposureCells } from "@/db/queries/exposure-cells";
import { loadCatalogueWords } from "@/db/queries/known-words";
import type { Day } from "@/lib/calendar/day";
import { type ComponentLife, componentLife } from "@/lib/failures/component-life";
import { readRateQuestion } from "./read-rate-question";

export type LifeView =
  | { readonly kind: "unknown-component" }
  | { readonly kind: "no-data"; readonly name: string }
  | { readonly kind: "life"; readonly name: string; readonly notices: readonly string[]; readonly life: ComponentLife };

/** When one component fails, for the units that the address narrows to. */
export async function loadComponentLife(
  db: Reader,
  component: string,
  values: AddressValues,
  today: Day,
): Promise<LifeView> {
  const words = await loadCatalogueWords(db, today);
  const name = words.components.find((entry) => entry.key === component)?.name;
  if (name === undefined) return { kind: "unknown-component" };
  if (words.cutOff === undefined) return { kind: "no-data", name };
  const { question, notices } = readRateQuestion(values, {
    makers: words.makers,
    models: words.models.map((model) => model.number),
    components: words.components.map((entry) => entry.key),
    symptoms: words.symptoms.map((symptom) => symptom.key),
    cutOff: words.cutOff,
  });
  const cells = await loadExposureCells(db, { ...question.where, lifeOf: component });
  return { kind: "life", name, notices, life: componentLife(cells, { ...question, component }) };
}
