import { addDays, type Day, toDay, toPlainDate } from "@/lib/calendar/day";

/**
 * First day of the first month that is forecast: the one that today lies in, or the next one on a month's last day,
 * when all of it is history.
 */
export function forecastMonth(today: Day): Day {
  return toDay(toPlainDate(addDays(today, 1)).with({ day: 1 }));
}

/** Days of the first forecast month that are gone. */
export function goneDays(forecastFrom: Day, today: Day): number {
  return Math.max(0, toPlainDate(forecastFrom).until(toPlainDate(today), { largestUnit: "day" }).days);
}

/** First day of a month so many months on. */
export function monthAfter(first: Day, months: number): Day {
  return toDay(toPlainDate(first).add({ months }));
}

/** Months from one first day to another, 0 or more. */
export function monthsBetween(from: Day, until: Day): number {
  return Math.max(0, toPlainDate(from).until(toPlainDate(until), { largestUnit: "month" }).months);
}
