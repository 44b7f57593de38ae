import { addDays, addMonths, type Day, day } from "@/lib/calendar/day";
import { type DayNumber, dayNumber } from "@/lib/calendar/day-number";
import { unitsAtSizeOne, yearsOfRecords } from "./company";

/** What decides the whole demo: the same three give the same files. */
export interface Scenario {
  readonly seed: number;
  readonly size: number;
  /** Last day of the records: the demo's today. */
  readonly until: Day;
  readonly untilNumber: DayNumber;
  /** Day from which repairs are on record. */
  readonly recordsFrom: Day;
  readonly recordsFromNumber: DayNumber;
  /** Units drawn, without those of the jobs told in full. */
  readonly units: number;
}

/** @throws RangeError for a seed that is not a whole number from 0 to 2^32-1, or a size not above 0 and at most 500 */
export function scenarioOf({
  seed,
  size,
  until,
}: Pick<Scenario, "seed" | "size"> & { readonly until: string }): Scenario {
  if (!Number.isInteger(seed) || seed < 0 || seed > 0xffffffff) {
    throw new RangeError(`seed: whole number from 0 to 4294967295 expected: ${seed}`);
  }
  if (!(size > 0 && size <= 500)) throw new RangeError(`size: number above 0, at most 500, expected: ${size}`);
  const last = day(until);
  if (last < "2026-01-01" || last > "2026-12-31") {
    throw new RangeError(`until: a day of 2026 expected, for which models and policies are written: ${until}`);
  }
  const recordsFrom = addDays(addMonths(last, -12 * yearsOfRecords), 1);
  return {
    seed,
    size,
    until: last,
    untilNumber: dayNumber(last),
    recordsFrom,
    recordsFromNumber: dayNumber(recordsFrom),
    units: Math.max(1, Math.round(unitsAtSizeOne * size)),
  };
}
