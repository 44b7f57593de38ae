import type { OutlookState } from "@/db/queries/part-list";
import type { Day } from "@/lib/calendar/day";
import { forecastMonth } from "@/lib/forecast/forecast-month";
import { startForecastRun } from "./forecast-run";

export type Freshness =
  /** Nothing was ever used or kept. */
  | { readonly kind: "nothing" }
  | { readonly kind: "first-time" }
  | { readonly kind: "behind"; readonly marked: number; readonly otherMonth: boolean }
  | { readonly kind: "current" };

/** Whether what is shown is what the records say now; where it is not, working it out begins. */
export function settleState(state: OutlookState, today: Day): Freshness {
  const { forecastFrom, marked, anyUse, plannedOn } = state;
  if (forecastFrom === undefined || plannedOn === undefined) {
    if (!anyUse && marked === 0) return { kind: "nothing" };
    startForecastRun();
    return { kind: "first-time" };
  }
  const otherMonth = forecastFrom !== forecastMonth(today);
  if (otherMonth || marked > 0 || plannedOn !== today) startForecastRun();
  return otherMonth || marked > 0 ? { kind: "behind", marked, otherMonth } : { kind: "current" };
}
