// How long cover runs, in the unit that the policy states: twelve months are never 365 days.
import { addDays, addMonths, type Day, daysBetween } from "./day";

export const countedUnits = ["day", "month", "year"] as const;
export type CountedUnit = (typeof countedUnits)[number];

export type Term = CountedTerm | { readonly unit: "lifetime" };

export interface CountedTerm {
  readonly n: number;
  readonly unit: CountedUnit;
}

/** Whether the day that starts the term is day 0 ("from") or day 1 ("beginning with"). */
export const anchorDays = ["exclude", "include"] as const;
export type AnchorDay = (typeof anchorDays)[number];

/** Last day of cover; `lifetime` where the term has no end. */
export type LastDay = Day | "lifetime";

/**
 * Last day of a term, which is itself covered.
 * Excluded anchor: the same-numbered day n months on, or the last of that month where it lacks that day.
 * Included anchor: the day before it; but the last of the month itself where the numbered day is missing.
 * @throws RangeError for a length that is not a whole number above 0: a policy is checked when it is parsed
 * Source: Dodds v Walker [1981] UKHL; Regulation (EEC, Euratom) 1182/71 art. 3; New York General Construction Law 20, 30.
 * Checked: tests/coverage/coverage-cases.test.ts, tests/calendar/term.test.ts.
 */
export function lastCoveredDay(start: Day, term: Term, anchorDay: AnchorDay): LastDay {
  if (term.unit === "lifetime") return "lifetime";
  const end = addTerm(start, term);
  if (anchorDay === "exclude" || isClamped(start, end, term)) return end;
  return addDays(end, -1);
}

/** The whole term in one step: 31 January + 2 months is 31 March, not twice one month. */
export function addTerm(start: Day, term: CountedTerm): Day {
  if (!Number.isInteger(term.n) || term.n < 1) throw new RangeError(`term.n: whole number above 0 expected: ${term.n}`);
  if (term.unit === "day") return addDays(start, term.n);
  return addMonths(start, term.unit === "year" ? 12 * term.n : term.n);
}

/** Calendar days by which `on` is inside the term (0 on the last day), or outside it where negative. */
export function daysLeft(on: Day, last: LastDay): number | "lifetime" {
  return last === "lifetime" ? "lifetime" : daysBetween(on, last);
}

export function isOnOrBefore(on: Day, last: LastDay): boolean {
  return last === "lifetime" || on <= last;
}

export function earlierEnd(a: LastDay, b: LastDay): LastDay {
  return isLater(a, b) ? b : a;
}

function isLater(a: LastDay, b: LastDay): boolean {
  if (b === "lifetime") return false;
  return a === "lifetime" || a > b;
}

/** Day numbers stand at the end of ISO text; they differ only where the month had to be shortened. */
function isClamped(start: Day, end: Day, term: CountedTerm): boolean {
  return term.unit !== "day" && start.slice(8) !== end.slice(8);
}
