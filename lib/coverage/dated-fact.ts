import { earlierOf, laterOf } from "@/lib/calendar/day";
import { exactly } from "@/lib/calendar/day-range";
import type { RawDay } from "@/lib/calendar/raw-day";
import type { DatedFact } from "./coverage-facts";

/** What a raw cell gives coverage to work with. Two readings are carried as two ends, never settled by habit. */
export function datedFact(raw: RawDay, cell: string, seenIn: string | undefined): DatedFact {
  switch (raw.kind) {
    case "day":
    case "day_number":
      return { kind: "known", on: exactly(raw.on), precision: "day", seenIn };
    case "month":
      return { kind: "known", on: raw.on, precision: "month", seenIn };
    case "two_readings": {
      const on = {
        earliest: earlierOf(raw.monthFirst, raw.dayFirst),
        latest: laterOf(raw.monthFirst, raw.dayFirst),
      };
      return { kind: "known", on, precision: "two_readings", seenIn };
    }
    case "placeholder":
      return { kind: "placeholder", raw: cell };
    case "no_such_day":
      return { kind: "wrong", raw: cell, problem: "no_such_date" };
    case "unreadable":
      return { kind: "wrong", raw: cell, problem: "unreadable_date" };
  }
}
