import { addDays, daysBetween, laterOf } from "@/lib/calendar/day";
import { isOnOrBefore, type LastDay } from "@/lib/calendar/term";
import type { RepairSpan } from "./coverage-facts";

/**
 * A last day with the days out for repair added, both days of a span counted. Only a repair that began under cover
 * stops the clock; each extension may bring the next one under cover. A day on which two spans lie counts once.
 */
export function tolled(
  last: LastDay,
  spans: readonly RepairSpan[],
): { readonly last: LastDay; readonly addedDays: number } {
  let moved = last;
  let addedDays = 0;
  let counted: RepairSpan["until"] | undefined;
  for (const span of [...spans].sort((a, b) => (a.from < b.from ? -1 : 1))) {
    if (moved === "lifetime" || !isOnOrBefore(span.from, moved)) break;
    const from = counted === undefined ? span.from : laterOf(span.from, addDays(counted, 1));
    const days = daysBetween(from, span.until) + 1;
    if (days <= 0) continue;
    moved = addDays(moved, days);
    addedDays += days;
    counted = span.until;
  }
  return { last: moved, addedDays };
}
