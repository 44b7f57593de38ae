import { type Day, toPlainDate } from "@/lib/calendar/day";
import { monthAfter } from "@/lib/forecast/forecast-month";
import type { StoredMonth } from "@/lib/forecast/stored-outlook";
import { describeNeed } from "@/lib/format/describe-need";
import { formatCounted } from "@/lib/format/format-count";
import { monthName } from "@/lib/format/format-month";

export interface FanQuestion {
  /** Pieces in each month before the forecast, oldest first; they end with the month before it. */
  readonly history: readonly number[];
  readonly months: readonly StoredMonth[];
  readonly forecastFrom: Day;
  /** How many months are drawn on each side of today. */
  readonly before: number;
  readonly after: number;
}

export interface Fan {
  readonly max: number;
  readonly ticks: readonly number[];
  /** Where today lies, 0 to 1 from left to right. */
  readonly today: number;
  readonly seen: readonly { readonly at: number; readonly count: number; readonly spoken: string }[];
  readonly ahead: readonly { readonly at: number; readonly month: StoredMonth; readonly spoken: string }[];
  /** Names of some months under the axis. */
  readonly labels: readonly { readonly at: number; readonly text: string }[];
}

/** What was used and what is expected, on one axis of months and one of pieces from 0. */
export function fan({ history, months, forecastFrom, before, after }: FanQuestion): Fan {
  const past = history.slice(-before);
  const future = months.slice(0, after);
  const columns = past.length + future.length;
  const at = (column: number) => (column + 0.5) / columns;
  const dayOf = (column: number) => monthAfter(forecastFrom, column - past.length);
  const highest = Math.max(1, ...past, ...future.map(({ band90 }) => band90.high));
  const step = tickStep(highest);
  const max = step * Math.ceil((highest * 1.02) / step);
  // On a phone, where few months are drawn, names every three would touch each other.
  const apart = columns > 30 || columns < 20 ? 6 : 3;
  return {
    max,
    ticks: Array.from({ length: Math.round(max / step) + 1 }, (_, i) => i * step),
    today: past.length / columns,
    seen: past.map((count, i) => ({
      at: at(i),
      count,
      spoken: `${monthWords(dayOf(i))}: ${formatCounted(count, "piece")} used`,
    })),
    ahead: future.map((month, i) => ({
      at: at(past.length + i),
      month,
      spoken: `${monthWords(dayOf(past.length + i))}, expected: ${describeNeed(needOf(month))}`,
    })),
    labels: Array.from({ length: columns }, (_, column) => column)
      .filter((column) => (column - past.length) % apart === 0)
      .map((column) => ({ at: at(column), text: shortMonth(dayOf(column)) })),
  };
}

export function needOf({ band60, band90 }: StoredMonth) {
  return { low60: band60.low, high60: band60.high, low90: band90.low, high90: band90.high };
}

/** "December 2025" */
export function monthWords(day: Day): string {
  return `${monthName(day)} ${toPlainDate(day).year}`;
}

function shortMonth(day: Day): string {
  return `${monthName(day).slice(0, 3)} ${String(toPlainDate(day).year).slice(2)}`;
}

/** Whole steps of 1, 2 or 5, so that four to eight of them reach the highest. */
function tickStep(highest: number): number {
  const rough = highest / 5;
  const ten = 10 ** Math.floor(Math.log10(Math.max(1, rough)));
  return [1, 2, 5, 10].map((factor) => factor * ten).find((step) => step >= rough) ?? ten;
}
