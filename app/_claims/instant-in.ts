import { Temporal } from "temporal-polyfill";
import { toDay } from "@/lib/calendar/day";
import { formatDay } from "@/lib/format/format-day";

/** "Tue 2 Dec 2025, 14:03", as the shop's clock showed it. @param at instant, as the database writes it */
export function instantIn(at: string, timeZone: string): string {
  const local = Temporal.Instant.from(at.replace(" ", "T")).toZonedDateTimeISO(timeZone);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${formatDay(toDay(local.toPlainDate()))}, ${two(local.hour)}:${two(local.minute)}`;
}
