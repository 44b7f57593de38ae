import type { DayNumber } from "@/lib/calendar/day-number";
import { numberOfDay } from "./day-text";
import type { Model } from "./models";

/** Refrigerators fail more in summer: this share above the year's mean at the peak, below it half a year later. */
export const summerSwing = 0.4;

/** Day of the year at which refrigerators fail most: 10 July. */
export const peakDayOfYear = 191;

/**
 * Age as wear counts it: a refrigerator's summer day is worth more than a winter day, and over a year the two even out.
 * A component's life is drawn in this time, so the hazard at a calendar day is the Weibull hazard at its worn age times
 * the season's factor of that day.
 */
export function wornDays(productType: Model["productType"], from: DayNumber, to: DayNumber): number {
  return productType === "refrigerator" ? seasonUpTo(to) - seasonUpTo(from) : to - from;
}

/** The calendar day on which `worn` days of wear have passed since the start of `from`. */
export function dayAfterWear(productType: Model["productType"], from: DayNumber, worn: number): DayNumber {
  if (productType !== "refrigerator") return from + Math.floor(worn);
  const target = seasonUpTo(from) + worn;
  let low = from;
  let high = from + Math.ceil(worn / (1 - summerSwing)) + 1;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (seasonUpTo(middle) <= target) low = middle;
    else high = middle;
  }
  return low;
}

export function seasonFactor(productType: Model["productType"], on: DayNumber): number {
  return productType === "refrigerator" ? 1 + summerSwing * Math.cos((2 * Math.PI * (on - peak)) / yearDays) : 1;
}

/** Integral of the season's factor over the days before `on`, from an arbitrary zero. */
function seasonUpTo(on: DayNumber): number {
  return on + (summerSwing * yearDays * Math.sin((2 * Math.PI * (on - peak)) / yearDays)) / (2 * Math.PI);
}

const yearDays = 365.2425;
const peak = numberOfDay("2020-01-01") + peakDayOfYear - 1;
