import { addDays, addMonths, type Day, day } from "./day";
import { type AnchorDay, addTerm, type CountedTerm, type LastDay, lastCoveredDay, type Term } from "./term";

/** A day known only to lie between two days; both ends belong to it, and they are equal where the day is known. */
export interface DayRange {
  readonly earliest: Day;
  readonly latest: Day;
}

/** Last covered day when the start is a range. */
export interface LastDayRange {
  readonly earliest: LastDay;
  readonly latest: LastDay;
}

export function exactly(on: Day): DayRange {
  return { earliest: on, latest: on };
}

export function isExact(range: LastDayRange): boolean {
  return range.earliest === range.latest;
}

/** Every day of a calendar month. @throws RangeError for a month outside 1 to 12 or a year without four digits */
export function monthRange(year: number, month: number): DayRange {
  const first = day(`${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}-01`);
  return { earliest: first, latest: addDays(addMonths(first, 1), -1) };
}

/** Both ends moved by the whole term; each is clamped on its own. */
export function addTermToRange(range: DayRange, term: CountedTerm): DayRange {
  return { earliest: addTerm(range.earliest, term), latest: addTerm(range.latest, term) };
}

export function lastCoveredDays(start: DayRange, term: Term, anchorDay: AnchorDay): LastDayRange {
  const earliest = lastCoveredDay(start.earliest, term, anchorDay);
  if (start.earliest === start.latest) return { earliest, latest: earliest };
  return { earliest, latest: lastCoveredDay(start.latest, term, anchorDay) };
}
