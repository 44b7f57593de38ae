import type { DayRange, LastDayRange } from "./day-range";
import type { LastDay, Term } from "./term";

const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** "2 Dec 2025": the month in letters, because 02/12 and 12/02 are read differently in different countries. */
export function dayInWords(on: LastDay): string {
  if (on === "lifetime") return "no end";
  return `${Number(on.slice(8))} ${months[Number(on.slice(5, 7)) - 1]} ${on.slice(0, 4)}`;
}

/** "between 1 Sep 2024 and 30 Sep 2024", or the one day. */
export function daysInWords(range: DayRange | LastDayRange): string {
  if (range.earliest === range.latest) return dayInWords(range.earliest);
  return `between ${dayInWords(range.earliest)} and ${dayInWords(range.latest)}`;
}

/** The term as the policy writes it: 24 months stay 24 months. */
export function termInWords(term: Term): string {
  return term.unit === "lifetime" ? "lifetime" : countOf(term.n, term.unit);
}

export function countOf(n: number, unit: string): string {
  return `${n} ${n === 1 ? unit : `${unit}s`}`;
}
