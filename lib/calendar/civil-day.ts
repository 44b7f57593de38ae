import { Temporal } from "temporal-polyfill";
import { type Day, toDay } from "./day";

export type CivilDay =
  | { readonly kind: "day"; readonly on: Day }
  | { readonly kind: "no_such_instant"; readonly text: string }
  | { readonly kind: "no_such_zone"; readonly zone: string };

/**
 * The calendar day at the service address during an instant. A request at 03:30 UTC is still the evening before in
 * Los Angeles, and that evening decides.
 * Source: New York General Construction Law 19 (midnight to midnight); RFC 9557 for the zone's name.
 * Checked: tests/calendar/civil-day.test.ts.
 */
export function civilDay(instant: string, zone: string): CivilDay {
  const at = readInstant(instant);
  if (at === undefined) return { kind: "no_such_instant", text: instant };
  try {
    return { kind: "day", on: toDay(at.toZonedDateTimeISO(zone).toPlainDate()) };
  } catch {
    return { kind: "no_such_zone", zone };
  }
}

/** An instant needs its offset: 2026-03-16T03:30:00 alone names no moment. */
function readInstant(text: string): Temporal.Instant | undefined {
  try {
    return Temporal.Instant.from(text);
  } catch {
    return undefined;
  }
}
