import { AddressReader, type AddressValues } from "@/app/_address/address-reader";
import type { Reader } from "@/db/database-types";
import { loadExposureCells } from "@/db/queries/exposure-cells";
import { type CatalogueWords, loadCatalogueWords } from "@/db/queries/known-words";
import type { Day } from "@/lib/calendar/day";
import type { ExposureCells } from "@/lib/failures/cells";
import { type FailureRates, failureRates } from "@/lib/failures/failure-rates";
import { type LifeDetail, lifeDetail } from "@/lib/failures/life-detail";
import { type MissingAnswer, missingAnswer } from "@/lib/failures/missing-answer";
import { unplacedUnits } from "@/lib/failures/unplaced-units";
import type { LifeQuestion } from "@/lib/failures/visit-spells";
import { readLifeAddress } from "./life-address";

export const rowGroupings = ["model", "maker", "type", "age", "symptom"] as const;
export type RowGrouping = (typeof rowGroupings)[number];

export type LifeView =
  | { readonly kind: "unknown-component" }
  | { readonly kind: "no-data"; readonly name: string }
  | DrawnLife;

export interface DrawnLife {
  readonly kind: "life";
  readonly name: string;
  readonly words: CatalogueWords;
  readonly cutOff: Day;
  readonly notices: readonly string[];
  readonly question: LifeQuestion;
  readonly life: LifeDetail;
  readonly missing: MissingAnswer | undefined;
  readonly unplaced: ReturnType<typeof unplacedUnits>;
  /** The same failures in rows, by one grouping. */
  readonly rows: RowGrouping;
  readonly rates: FailureRates;
}

/** When one component fails, for the units that the address narrows to. */
export async function loadComponentLife(
  db: Reader,
  component: string,
  values: AddressValues,
  today: Day,
): Promise<LifeView> {
  return (await readComponentLife(db, component, values, today))();
}

/** Reads what the answer needs. @returns the answer, to be reckoned when no transaction waits for it */
export async function readComponentLife(
  db: Reader,
  component: string,
  values: AddressValues,
  today: Day,
): Promise<() => LifeView> {
  const words = await loadCatalogueWords(db, today);
  const name = words.components.find((entry) => entry.key === component)?.name;
  if (name === undefined) return () => ({ kind: "unknown-component" });
  const { cutOff } = words;
  if (cutOff === undefined) return () => ({ kind: "no-data", name });
  const { question, notices } = readLifeAddress(component, values, { words, cutOff, own: ["rows"] });
  const own = new AddressReader({ rows: values.rows }, ["rows"]);
  const asked = own.oneOf("rows", rowGroupings, `Choose ${rowGroupings.join(", ")}.`);
  const cells = await loadExposureCells(db, { ...question.where, onlyComponents: [component] });
  const where = { ...question.where, component };
  const rows = asked ?? (modelsAsked(cells, where.model) > 1 ? "model" : "age");
  return () => ({
    kind: "life",
    name,
    words,
    cutOff,
    notices: [...notices, ...own.notices],
    question,
    life: lifeDetail(cells, question),
    missing: missingAnswer(cells, question),
    unplaced: unplacedUnits(cells, where),
    rows,
    rates: failureRates(cells, { ...question, where, by: [rows], counting: "failures" }),
  });
}

function modelsAsked(cells: ExposureCells, model: string | undefined): number {
  return model === undefined ? cells.models.length : 1;
}
