import { type Cause, causeKeys, causes } from "@/lib/domain/cause";
import { payerKinds } from "@/lib/domain/job";
import { payerNames } from "@/lib/domain/payer-names";
import { productTypes } from "@/lib/domain/product-type";
import type { CountedWord, ExposureCells, ModelEntry, SortedJob } from "./cells";
import { addExposure, allAges, type Exposure, type ModelExposure, noExposure, yearNumber } from "./exposure";
import { ageBandOf, ageBands, type Dimension, type RateQuestion } from "./rate-question";

/** One value for each dimension of the question, in its order. */
export type GroupKey = readonly { readonly dimension: Dimension; readonly value: string; readonly name: string }[];

export interface Group {
  readonly key: GroupKey;
  readonly exposure: Exposure;
}

/** A question whose grouping may be empty: the whole fleet in one. */
export type Grouping = Omit<RateQuestion, "by"> & { readonly by: readonly Dimension[] };

export function keyText(key: GroupKey): string {
  return key.map((part) => part.value).join("\u001f");
}

/**
 * Every group that could have a failure, with its time at risk: a model's units are at risk for the components and
 * symptoms that its product type has, and for no others; for every cause that is counted, whoever pays; and in each year of
 * the period.
 * @param exposure  by calendar year for a grouping by years, else of the whole period under ""
 */
export function groupsWithExposure(
  cells: ExposureCells,
  question: Grouping,
  exposure: ReadonlyMap<string, ModelExposure>,
): Map<string, Group> {
  const groups = new Map<string, Group>();
  for (const model of cells.models) {
    if (!inFleet(cells, model, question)) continue;
    for (const key of keysOfModel(cells, model, { ...question, years: [...exposure.keys()] })) {
      const year = key.find(({ dimension }) => dimension === "year")?.value ?? "";
      const rows = exposure.get(year)?.get(model.modelId);
      if (rows === undefined) continue;
      const more = rows[ageIndex(key, question)] ?? noExposure;
      const known = groups.get(keyText(key));
      if (more.unitDays > 0 || known !== undefined) {
        groups.set(keyText(key), { key, exposure: addExposure(known?.exposure ?? noExposure, more) });
      }
    }
  }
  return groups;
}

/** The group of one job. @returns undefined where the job does not name what it is grouped by. */
export function groupKeyOf(
  cell: SortedJob,
  cells: ExposureCells,
  model: ModelEntry,
  by: readonly Dimension[],
): GroupKey | undefined {
  const key: GroupKey[number][] = [];
  for (const dimension of by) {
    const part = dimension === "age" ? agePart(cell) : partOfJob(dimension, cell, cells, model);
    if (part === undefined) return undefined;
    key.push(part);
  }
  return key;
}

/** Whether the units of a model can have what the question asks about. */
export function inFleet(cells: ExposureCells, model: ModelEntry, { where }: Pick<RateQuestion, "where">): boolean {
  if (where.maker !== undefined && where.maker !== model.maker) return false;
  if (where.model !== undefined && where.model !== model.number) return false;
  if (where.productType !== undefined && where.productType !== model.productType) return false;
  return applies(cells.components, where.component, model) && applies(cells.symptoms, where.symptom, model);
}

function applies(words: readonly CountedWord[], key: string | undefined, model: ModelEntry): boolean {
  return key === undefined || words.some((word) => word.key === key && word.productTypes.includes(model.productType));
}

type YearGrouping = Grouping & { readonly years: readonly string[] };

function keysOfModel(cells: ExposureCells, model: ModelEntry, question: YearGrouping): GroupKey[] {
  return question.by.reduce<GroupKey[]>(
    (keys, dimension) =>
      keys.flatMap((key) => partsOf(dimension, cells, model, question).map((part) => [...key, part])),
    [[]],
  );
}

function partsOf(
  dimension: Dimension,
  cells: ExposureCells,
  model: ModelEntry,
  { where, counting, years }: YearGrouping,
): GroupKey[number][] {
  switch (dimension) {
    case "component":
      return wordsOf(cells.components, where.component, model).map((word) => part(dimension, word));
    case "symptom":
      return wordsOf(cells.symptoms, where.symptom, model).map((word) => part(dimension, word));
    case "age":
      return ageBands
        .filter((band) => where.age === undefined || band.key === where.age)
        .map((band) => part(dimension, band));
    case "cause":
      return causesCounted(counting).map((cause) => part(dimension, { key: cause, name: causes[cause].name }));
    case "payer":
      return payerKinds.map((key) => part(dimension, { key, name: payerNames[key] }));
    case "year":
      return years.map((year) => part(dimension, { key: year, name: year }));
    default:
      return [partOfModel(dimension, model)];
  }
}

function causesCounted(counting: Grouping["counting"]): readonly Cause[] {
  if (counting === "failures") return ["component"];
  return counting === "calls" ? causeKeys : [counting];
}

function wordsOf(words: readonly CountedWord[], only: string | undefined, model: ModelEntry): readonly CountedWord[] {
  return words.filter(
    (word) => word.productTypes.includes(model.productType) && (only === undefined || word.key === only),
  );
}

function partOfJob(dimension: Exclude<Dimension, "age">, cell: SortedJob, cells: ExposureCells, model: ModelEntry) {
  if (dimension === "cause") return part(dimension, { key: cell.cause, name: causes[cell.cause].name });
  if (dimension === "year") return yearPart(cell.failedOn);
  if (dimension === "payer") return payerPart(cell);
  if (dimension !== "component" && dimension !== "symptom") return partOfModel(dimension, model);
  const key = dimension === "component" ? cell.component : cell.symptom;
  const words = dimension === "component" ? cells.components : cells.symptoms;
  return key === undefined ? undefined : part(dimension, words.find((word) => word.key === key) ?? { key, name: key });
}

function partOfModel(dimension: "model" | "maker" | "type", model: ModelEntry): GroupKey[number] {
  switch (dimension) {
    case "model":
      return part(dimension, { key: model.number, name: model.number });
    case "maker":
      return part(dimension, { key: model.maker, name: model.maker });
    case "type":
      return part(dimension, { key: model.productType, name: productTypes[model.productType] });
  }
}

function agePart(cell: SortedJob): GroupKey[number] | undefined {
  return cell.place && part("age", ageBandOf(cell.failedOn - cell.place.inServiceOn));
}

/** @throws RangeError where the cells were read without it: the caller must ask for it. */
function payerPart({ payer }: SortedJob): GroupKey[number] {
  if (payer === undefined) throw new RangeError("cells.jobs: a grouping by payer needs the payer of each job");
  return part("payer", { key: payer, name: payerNames[payer] });
}

function yearPart(failedOn: number): GroupKey[number] {
  const year = String(yearNumber(failedOn));
  return part("year", { key: year, name: year });
}

function ageIndex(key: GroupKey, { where }: Grouping): number {
  const age = key.find((entry) => entry.dimension === "age")?.value ?? where.age;
  return age === undefined ? allAges : ageBands.findIndex((band) => band.key === age);
}

function part(dimension: Dimension, { key, name }: { readonly key: string; readonly name: string }): GroupKey[number] {
  return { dimension, value: key, name };
}
