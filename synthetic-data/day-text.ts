import { type Day, day } from "@/lib/calendar/day";
import { type DayNumber, dayFromNumber, dayNumber } from "@/lib/calendar/day-number";

/** ISO text of a day number. A story uses the same few thousand days over and over, so each is written once. */
export function dayText(number: DayNumber): Day {
  const known = written.get(number);
  if (known !== undefined) return known;
  const text = dayFromNumber(number);
  written.set(number, text);
  return text;
}

export function numberOfDay(text: string): DayNumber {
  return dayNumber(day(text));
}

const written = new Map<DayNumber, Day>();
