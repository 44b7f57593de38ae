import type { MoneyFacts } from "@/db/queries/money-recovery";
import { type Day, daysBetween } from "@/lib/calendar/day";
import { kaplanMeier } from "@/lib/statistics/survival/kaplan-meier";
import { survivalQuantile } from "@/lib/statistics/survival/survival-quantile";

export type DaysToPayment = { readonly sent: number; readonly paid: number } & (
  | { readonly kind: "median"; readonly days: number; readonly low: string; readonly high: string | undefined }
  /** Fewer than half were paid so far, or nothing was sent. */
  | { readonly kind: "not yet" }
);

/** Days from first sending to the first payment; a claim that is not paid is watched until today, not left out. */
export function daysToPayment(claims: MoneyFacts["claims"], today: Day, confidence: number): DaysToPayment {
  const rows = claims
    .filter(({ firstSentOn }) => firstSentOn <= today)
    .map(({ firstSentOn, paidOn }) => ({
      entry: 0,
      exit: Math.max(0.5, daysBetween(firstSentOn, paidOn ?? today)), // paid on the day itself is within it
      event: paidOn !== undefined,
      count: 1,
    }));
  const made = { sent: rows.length, paid: rows.filter(({ event }) => event).length };
  if (rows.length === 0) return { kind: "not yet", ...made };
  const curve = kaplanMeier(rows, { confidence, interval: "log-log" });
  if (curve.kind !== "curve") return { kind: "not yet", ...made };
  const median = survivalQuantile(curve, 0.5);
  if (median.kind !== "reached") return { kind: "not yet", ...made };
  const { age, low, high } = median;
  return {
    kind: "median",
    ...made,
    days: Math.round(age),
    low: low === "not-reached" ? "0" : String(Math.round(low)),
    high: high === "not-reached" ? undefined : String(Math.round(high)),
  };
}
