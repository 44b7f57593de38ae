import { type Day, toPlainDate } from "@/lib/calendar/day";
import { monthNames } from "@/lib/calendar/month-names";

/** "December": the calendar month of a day, in a sentence. */
export function monthName(day: Day): string {
  return monthNames[toPlainDate(day).month - 1] ?? "";
}
