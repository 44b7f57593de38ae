import type { Day } from "@/lib/calendar/day";
import type { DateOrder } from "./matching";

export type Decision<Value> =
  | { readonly value: Value; readonly reason: string }
  /** The file cannot tell, so a person has to. */
  | { readonly question: string; readonly reason: string };

/** Whether day or month comes first, from every date of the file; asked where the file cannot tell, never guessed. */
export function guessDateOrder(cells: Iterable<string>, today: Day): Decision<DateOrder> {
  const seen = {
    dates: 0,
    parted: 0,
    secondOver12: 0,
    firstOver12: 0,
    dayFirstAhead: 0,
    monthFirstAhead: 0,
    different: 0,
  };
  for (const cell of cells) {
    const found = /^\s*(\d{1,2})\s?[-/. ]\s?(\d{1,2})\s?[-/. ]\s?(\d{4}|'?\d{2})(?!\d)/.exec(cell);
    if (/\d\D+\d|^\s*\d{5,8}/.test(cell)) seen.dates++;
    if (found === null) continue;
    seen.parted++;
    const [first, second] = [Number(found[1]), Number(found[2])];
    if (second > 12 && second <= 31 && first <= 12) seen.secondOver12++;
    else if (first > 12 && first <= 31 && second <= 12) seen.firstOver12++;
    else if (first !== second) {
      seen.different++;
      const year = (found[3] ?? "").replace("'", "").padStart(4, "20");
      if (`${year}-${two(second)}-${two(first)}` > today && first <= 31) seen.dayFirstAhead++;
      if (`${year}-${two(first)}-${two(second)}` > today && second <= 31) seen.monthFirstAhead++;
    }
  }
  return decide(seen, today);
}

function decide(
  {
    dates,
    parted,
    secondOver12,
    firstOver12,
    dayFirstAhead,
    monthFirstAhead,
    different,
  }: Readonly<Record<string, number>> & {
    dates: number;
    parted: number;
    secondOver12: number;
    firstOver12: number;
    dayFirstAhead: number;
    monthFirstAhead: number;
    different: number;
  },
  today: Day,
): Decision<DateOrder> {
  if (parted === 0)
    return {
      value: "year first",
      reason: dates === 0 ? "The file holds no dates." : `None of ${dates} dates leaves open which part is the day.`,
    };
  if (secondOver12 > 0 && firstOver12 === 0)
    return {
      value: "month first",
      reason: `Month first: ${secondOver12} of ${parted} dates have a second part over 12, none a first part.`,
    };
  if (firstOver12 > 0 && secondOver12 === 0)
    return {
      value: "day first",
      reason: `Day first: ${firstOver12} of ${parted} dates have a first part over 12, none a second part.`,
    };
  if (firstOver12 > 0)
    return {
      question: "Does the day or the month come first in this file?",
      reason: `${firstOver12} of ${parted} dates have a first part over 12 and ${secondOver12} a second part: both orders occur.`,
    };
  if (different === 0)
    return {
      value: "month first",
      reason: `Day and month are equal in all of ${parted} dates, so the order changes nothing.`,
    };
  if (dayFirstAhead > 0 && monthFirstAhead === 0)
    return {
      value: "month first",
      reason: `Month first: read day first, ${dayFirstAhead} of ${parted} dates would lie after today, ${today}.`,
    };
  if (monthFirstAhead > 0 && dayFirstAhead === 0)
    return {
      value: "day first",
      reason: `Day first: read month first, ${monthFirstAhead} of ${parted} dates would lie after today, ${today}.`,
    };
  return {
    question: "Does the day or the month come first in this file?",
    reason: `None of ${parted} dates has a part over 12, so the file cannot tell.`,
  };
}

function two(value: number): string {
  return String(value).padStart(2, "0");
}
