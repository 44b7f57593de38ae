import { type Day, toPlainDate } from "@/lib/calendar/day";

const months = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;

/** "December": the calendar month of a day, in a sentence. */
export function monthName(day: Day): string {
  return months[toPlainDate(day).month - 1] ?? "";
}
