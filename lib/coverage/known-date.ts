import type { Day } from "@/lib/calendar/day";
import { type DayRange, exactly } from "@/lib/calendar/day-range";
import type { DatedFact } from "./coverage-facts";

/** A dated fact on one known day. */
export function knownDay(on: Day, seenIn?: string): DatedFact {
  return { kind: "known", on: exactly(on), precision: "day", seenIn };
}

/** A dated fact of which only the range is known, such as a month of manufacture. */
export function knownRange(on: DayRange, seenIn?: string): DatedFact {
  return { kind: "known", on, precision: on.earliest === on.latest ? "day" : "month", seenIn };
}
