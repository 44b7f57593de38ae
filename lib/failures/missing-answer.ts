import type { DayNumber } from "@/lib/calendar/day-number";
import type { ExposureCells, UnplacedReason } from "./cells";
import { inFleet } from "./groups";
import { observedAges } from "./observation";
import { unplacedUnits } from "./unplaced-units";
import type { LifeQuestion } from "./visit-spells";

/** Why a question about one component has no answer, with what would have to be there. */
export type MissingAnswer =
  /** No model under the filter is of a type that has the component, or the symptom. */
  | { readonly kind: "no-such-units" }
  /** Units exist, and none has a day from which it was watched. */
  | {
      readonly kind: "no-exposure";
      readonly units: readonly { readonly reason: UnplacedReason; readonly units: number }[];
    }
  /** The period ends before the first unit came under watch. */
  | { readonly kind: "before-records"; readonly firstWatchedOn: DayNumber }
  /** Units exist and were watched, though none of them on a day of this period. */
  | { readonly kind: "outside-period"; readonly units: number }
  /** Units were watched, and every failure that we know of lies after the period. */
  | { readonly kind: "before-first-failure"; readonly firstFailedOn: DayNumber };

/** @returns undefined where there is an answer, which may be that nothing failed */
export function missingAnswer(cells: ExposureCells, question: LifeQuestion): MissingAnswer | undefined {
  const where = { ...question.where, component: question.component };
  const asked = new Set(cells.models.filter((model) => inFleet(cells, model, { where })).map(({ modelId }) => modelId));
  const unplaced = unplacedUnits(cells, where);
  const windows = cells.windows.filter(({ modelId, units }) => asked.has(modelId) && units > 0);
  if (asked.size === 0 || (windows.length === 0 && unplaced.length === 0)) return { kind: "no-such-units" };
  if (windows.length === 0) return { kind: "no-exposure", units: unplaced };
  const firstWatchedOn = least(windows.map(({ observedFrom }) => observedFrom));
  if (question.until <= firstWatchedOn) return { kind: "before-records", firstWatchedOn };
  if (windows.every((window) => observedAges(window, question) === undefined))
    return { kind: "outside-period", units: windows.reduce((sum, { units }) => sum + units, 0) };
  const failedOn = cells.jobs
    .filter((cell) => asked.has(cell.modelId) && cell.component === question.component)
    .filter(({ countedAs, jobs }) => countedAs === "failure" && jobs > 0)
    .filter(({ symptom }) => where.symptom === undefined || symptom === where.symptom)
    .map((cell) => cell.failedOn);
  const firstFailedOn = least(failedOn);
  return failedOn.length > 0 && question.until <= firstFailedOn
    ? { kind: "before-first-failure", firstFailedOn }
    : undefined;
}

/** A loop, because a company has more windows than a call may have arguments. */
function least(days: readonly DayNumber[]): DayNumber {
  return days.reduce((first, day) => Math.min(first, day), Number.POSITIVE_INFINITY);
}
