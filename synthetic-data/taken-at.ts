import type { DayNumber } from "@/lib/calendar/day-number";
import { dayText, numberOfDay } from "./day-text";

/** An instant at the service address in Ohio, on that day at that minute after midnight. */
export function takenAt(on: DayNumber, minute: number): string {
  const hour = String(Math.floor(minute / 60)).padStart(2, "0");
  return `${dayText(on)}T${hour}:${String(minute % 60).padStart(2, "0")}:00${isSummerTime(on) ? "-04:00" : "-05:00"}`;
}

/** Eastern daylight time by day: from the second Sunday of March until the day before the first Sunday of November. */
function isSummerTime(on: DayNumber): boolean {
  const year = dayText(on).slice(0, 4);
  return on >= sundayFrom(numberOfDay(`${year}-03-08`)) && on < sundayFrom(numberOfDay(`${year}-11-01`));
}

/** The first Sunday that is not before the day. Day 3 is a Sunday. */
function sundayFrom(on: DayNumber): DayNumber {
  return on + ((((3 - on) % 7) + 7) % 7);
}
