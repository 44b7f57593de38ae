import { daysPerMonth } from "@/lib/failures/rate-question";

/** How long each month of the year is over a twelfth of a year, January first: February sees an eleventh fewer failures than March. */
export const lengthOfMonth: readonly number[] = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31].map(
  (days) => days / daysPerMonth,
);
