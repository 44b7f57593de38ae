import type { ExposureCells, JobCell, JobPlace, ModelEntry, SortedJob } from "./cells";
import { withinYear, yearNumber } from "./exposure";
import { type Grouping, type GroupKey, groupKeyOf, inFleet, keyText } from "./groups";
import { observedAges, type Placing, placeJob } from "./observation";
import { ageBandOf, type Dimension, type RateQuestion } from "./rate-question";
import type { Tally } from "./rate-with-limits";

export type LeftOutReason =
  | Exclude<Placing, "counted" | "outside the period">
  | "no component named"
  | "no symptom named"
  | "component or symptom not listed for the product type";

export interface JobTallies {
  /** By key text. */
  readonly groups: ReadonlyMap<string, { readonly key: GroupKey; readonly tally: Tally }>;
  readonly whole: Tally;
  readonly leftOut: ReadonlyMap<LeftOutReason, number>;
}

type Growing = { -readonly [K in keyof Tally]: number };
type Verdict = { readonly key: GroupKey } | { readonly leftOut: LeftOutReason } | undefined;

/**
 * Sorts the jobs that the question asks about into its groups; what can't be sorted is counted with its reason.
 * @param repeats  how failures bunch by unit costs as much again, and is not always wanted
 */
export function tallyJobs(
  cells: ExposureCells,
  question: Grouping,
  repeats: "with repeats" | "events only",
): JobTallies {
  const models = new Map(cells.models.map((model) => [model.modelId, model]));
  const groups = new Map<string, { key: GroupKey; tally: Growing }>();
  const whole: Growing = { events: 0, eventUnitDays: 0, repeats: 0 };
  const leftOut = new Map<LeftOutReason, number>();

  for (const cell of cells.jobs) {
    const verdict = sort(cell, cells, models.get(cell.modelId), question);
    if (verdict === undefined) continue;
    if ("leftOut" in verdict) {
      leftOut.set(verdict.leftOut, (leftOut.get(verdict.leftOut) ?? 0) + cell.jobs);
      continue;
    }
    const text = keyText(verdict.key);
    const group = groups.get(text) ?? { key: verdict.key, tally: { events: 0, eventUnitDays: 0, repeats: 0 } };
    groups.set(text, group);
    add(group.tally, cell, periodOf(cell, question), question.by.includes("age"));
    add(whole, cell, question, question.where.age !== undefined);
  }
  if (repeats === "with repeats") addRepeats(cells, models, question, groups, whole);
  return { groups, whole, leftOut };
}

function sort(cell: SortedJob, cells: ExposureCells, model: ModelEntry | undefined, question: Grouping): Verdict {
  if (model === undefined || !isAskedFor(cell, question) || !inFleet(cells, model, question)) return undefined;
  const placing = placeJob(cell.place, cell.failedOn, question);
  if (placing === "outside the period") return undefined;
  if (placing !== "counted") return { leftOut: placing };
  if (question.where.age !== undefined && ageOf(cell)?.key !== question.where.age) return undefined;
  if (!isListed(cell, cells, model, question.by))
    return { leftOut: "component or symptom not listed for the product type" };
  const key = groupKeyOf(cell, cells, model, question.by);
  if (key !== undefined) return { key };
  return {
    leftOut:
      cell.component === undefined && question.by.includes("component") ? "no component named" : "no symptom named",
  };
}

/** A failure of a part that the catalogue does not give to this type has no exposure of its own to be divided by. */
function isListed(
  cell: SortedJob,
  cells: ExposureCells,
  { productType }: ModelEntry,
  by: readonly Dimension[],
): boolean {
  const listed = (words: ExposureCells["components"], key: string | undefined) =>
    key === undefined || words.some((word) => word.key === key && word.productTypes.includes(productType));
  return (
    (!by.includes("component") || listed(cells.components, cell.component)) &&
    (!by.includes("symptom") || listed(cells.symptoms, cell.symptom))
  );
}

/** Days at risk of a group of one year are those of that year. */
function periodOf({ failedOn }: JobCell, question: Grouping): Pick<RateQuestion, "from" | "until"> {
  return question.by.includes("year") ? withinYear(question, yearNumber(failedOn)) : question;
}

function isAskedFor(cell: SortedJob, { counting, where }: Grouping): boolean {
  if (counting === "failures" && cell.countedAs !== "failure") return false;
  if (counting !== "failures" && counting !== "calls" && cell.cause !== counting) return false;
  return (
    (where.component === undefined || where.component === cell.component) &&
    (where.symptom === undefined || where.symptom === cell.symptom)
  );
}

function ageOf(cell: { readonly place: JobPlace | undefined; readonly failedOn: number }) {
  return cell.place && ageBandOf(cell.failedOn - cell.place.inServiceOn);
}

function add(tally: Growing, cell: JobCell, question: Pick<RateQuestion, "from" | "until">, withinBand: boolean): void {
  tally.events += cell.jobs;
  const ages = cell.place && observedAges(cell.place, question);
  if (ages === undefined) return;
  const band = withinBand ? ageOf(cell) : undefined;
  const days = Math.min(ages.exit, band?.untilDay ?? ages.exit) - Math.max(ages.entry, band?.fromDay ?? ages.entry);
  tally.eventUnitDays += cell.jobs * Math.max(days, 0);
}

/** Adds, per unit that failed m times within a group, the m squared less m that a plain count cannot know. */
function addRepeats(
  cells: ExposureCells,
  models: ReadonlyMap<number, ModelEntry>,
  question: Grouping,
  groups: ReadonlyMap<string, { tally: Growing }>,
  whole: Growing,
): void {
  const ofUnit = new Map<string, (Growing | undefined)[]>();
  for (const job of cells.repeated) {
    const verdict = sort(job, cells, models.get(job.modelId), question);
    if (verdict === undefined || "leftOut" in verdict) continue;
    const group = groups.get(keyText(verdict.key))?.tally;
    // The m squared less m of a unit is the sum of 2 x 0, 2 x 1, ... 2 x (m - 1): twice what came before, each time.
    const before = ofUnit.get(job.unitId);
    if (before === undefined) {
      ofUnit.set(job.unitId, [group]);
      continue;
    }
    whole.repeats += 2 * before.length;
    for (const earlier of before) if (group !== undefined && earlier === group) group.repeats += 2;
    before.push(group);
  }
}
