import { type Day, daysBetween } from "@/lib/calendar/day";
import { formatDay, formatDaysLeft } from "@/lib/format/format-day";

/** One cell a day, in order; the due day is outlined whether or not it has passed. */
export interface DayRuler {
  readonly cells: readonly DayCell[];
  readonly words: string;
}

export type DayCell = "elapsed" | "open" | "due" | "due-elapsed";

const longest = 60;

/**
 * The last days of a window that ends on `due`, that day included: at most 60 cells, so that long windows show the part
 * that still matters. A day counts as elapsed when it lies before today.
 */
export function dayRuler({
  from,
  due,
  today,
}: {
  readonly from: Day;
  readonly due: Day;
  readonly today: Day;
}): DayRuler {
  const length = daysBetween(from, due) + 1;
  if (length < 1) throw new RangeError(`due must not lie before from; they are ${due} and ${from}`);
  const left = daysBetween(today, due);
  const count = Math.min(length, longest);
  const cells = Array.from({ length: count }, (_, index): DayCell => {
    const daysToDue = count - 1 - index;
    const elapsed = daysToDue > left;
    if (daysToDue === 0) return elapsed ? "due-elapsed" : "due";
    return elapsed ? "elapsed" : "open";
  });
  return { cells, words: `${formatDay(due)}, ${formatDaysLeft(left)}` };
}
