import { addDays, type Day, day } from "@/lib/calendar/day";
import type { Decision } from "./guess-date-order";

/** Where a spreadsheet's bare day numbers count from; undefined where the file has none. */
export function guessDayNumbers(cells: Iterable<string>, today: Day): Decision<1900 | 1904> | undefined {
  let numbers = 0;
  let latest = 0;
  for (const cell of cells) {
    if (!/^\s*\d{5}(?:[.,]\d+)?\s*$/.test(cell)) continue;
    numbers++;
    latest = Math.max(latest, Math.floor(Number(cell.trim().replace(",", "."))));
  }
  if (numbers === 0) return undefined;
  const from1900 = addDays(day("1899-12-30"), latest);
  const from1904 = addDays(from1900, 1462);
  if (from1904 > today && from1900 <= today)
    return {
      value: 1900,
      reason: `Counted from 1900: counted from 1904, the latest of ${numbers} day numbers would be ${from1904}, after today.`,
    };
  return {
    question: "Do the day numbers of this file count from 1900 or from 1904?",
    reason: `${numbers} dates are bare day numbers; the latest is ${from1900} counted from 1900, and ${from1904} counted from 1904.`,
  };
}
