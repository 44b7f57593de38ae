import { Temporal } from "temporal-polyfill";

/**
 * An instant as other programs and people are told it: in UTC, such as 2025-03-05T10:15:00Z, whatever offset it came with.
 * @throws RangeError for text without an offset: it names no instant
 */
export function instantInUtc(text: string): string {
  return readInstant(text).toString();
}

/** "2025-03-05 10:15" on the clocks of the place, which is what stands on the paper. @throws RangeError as above, or for an unknown zone */
export function instantOnClock(text: string, timeZone: string): string {
  const there = readInstant(text).toZonedDateTimeISO(timeZone);
  return `${there.toPlainDate().toString()} ${there.toPlainTime().toString({ smallestUnit: "minute" })}`;
}

/** The database writes a space where ISO 8601 has a T. */
function readInstant(text: string): Temporal.Instant {
  try {
    return Temporal.Instant.from(text.replace(" ", "T"));
  } catch {
    throw new RangeError(`instant: ISO 8601 text with its offset expected: ${text}`);
  }
}

/**
 * The instant at which a clock of this zone showed this time; the earlier one where it showed it twice.
 * @throws RangeError for text that is no time, or an unknown zone
 */
export function instantOfClock(clock: string, timeZone: string): string {
  return Temporal.PlainDateTime.from(clock).toZonedDateTime(timeZone).toInstant().toString();
}
