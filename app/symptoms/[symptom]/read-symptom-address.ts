import { type ProductType, productTypes } from "@/lib/domain/product-type";
import { symptomOf } from "@/lib/domain/symptoms";
import { type AgeBand, ageBands } from "@/lib/sheets/sheet-basis";
import { type Season, type SymptomGroup, seasons } from "@/lib/sheets/symptom-shares";

export interface SymptomAddress {
  readonly productType: ProductType;
  readonly model: string | undefined;
  readonly age: AgeBand | undefined;
  readonly season: Season | undefined;
  /** Parts of the address that were not understood. */
  readonly notices: readonly string[];
}

type Given = Readonly<Record<string, string | readonly string[] | undefined>>;

/** Undefined where there is no such symptom. A kind of appliance that does not have it, or none, becomes the first that does. */
export function readSymptomAddress(symptom: string, given: Given): SymptomAddress | undefined {
  const known = symptomOf(symptom);
  const [first] = known?.productTypes ?? [];
  if (known === undefined || first === undefined) return undefined;
  const notices: string[] = [];
  const one = <Value extends string>(name: string, values: readonly Value[]): Value | undefined => {
    const text = given[name];
    if (typeof text !== "string" || text === "") return undefined;
    const found = values.find((value) => value === text);
    if (found === undefined) notices.push(`“${text}” is not a ${name} that this page knows; it was left out.`);
    return found;
  };
  const model = typeof given.model === "string" && given.model !== "" ? given.model : undefined;
  return {
    productType: one("type", known.productTypes) ?? first,
    model,
    age: one("age", ageBands),
    season: one("season", seasons),
    notices,
  };
}

/** The groups that the address asks for. */
export function asked<Group extends Pick<SymptomGroup, "model" | "ageBand" | "season">>(
  groups: readonly Group[],
  { model, age, season }: SymptomAddress,
): readonly Group[] {
  return groups.filter(
    (group) =>
      (model === undefined || group.model === model) &&
      (age === undefined || group.ageBand === age) &&
      (season === undefined || group.season === season),
  );
}

/** "Front-load washers, model X, first year, Jan–Mar" */
export function describeAsked({ productType, model, age, season }: SymptomAddress): string {
  return [productTypes[productType], model, age === undefined ? undefined : `age: ${age}`, season]
    .filter((part) => part !== undefined)
    .join(", ");
}
