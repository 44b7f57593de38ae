import { civilDay, type Day, weekdayOf } from "@/lib/calendar/day";

const weekdays = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;
const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;

/** "Tue 2 Dec 2025". Written out, because 02/12 and 12/02 are read differently in different countries. */
export function formatDay(day: Day): string {
  return `${weekdays[weekdayOf(day)]} ${formatPlainDay(day)}`;
}

/** "2 Dec 2025", for table columns where the weekday would only take room. */
export function formatPlainDay(day: Day): string {
  const { year, month, dayOfMonth } = civilDay(day);
  return `${dayOfMonth} ${months[month - 1]} ${year}`;
}

/** "9 days left", "last day today", "3 days over". */
export function formatDaysLeft(days: number): string {
  if (days === 0) return "last day today";
  const count = Math.abs(days);
  return `${count} ${count === 1 ? "day" : "days"} ${days > 0 ? "left" : "over"}`;
}
