import { Temporal } from "temporal-polyfill";
import { type Day, readDay, toDay } from "@/lib/calendar/day";

/**
 * The civil day in the shop's zone. The only clock that decides anything: everything below `app` is given the day.
 * OHMSWORTH_TODAY fixes it, for trying out how a day in the past or future looks and for tests.
 * @throws RangeError where OHMSWORTH_TODAY is no day
 */
export function todayIn(timeZone: string): Day {
  const fixed = process.env.OHMSWORTH_TODAY;
  if (fixed === undefined || fixed === "") return toDay(Temporal.Now.plainDateISO(timeZone));
  const read = readDay(fixed);
  if (read === undefined) throw new RangeError(`OHMSWORTH_TODAY must be a day such as 2026-03-31; it is “${fixed}”`);
  return read;
}
