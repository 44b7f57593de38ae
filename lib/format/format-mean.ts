import { formatDecimal } from "./format-decimal";

/** Failures per unit with what the range supports: "0.21 failures a unit (0.18 to 0.25)". */
export function describeMean(mean: number, low: number, high: number): string {
  const decimals = high - low >= 2 ? 1 : high - low >= 0.02 ? 2 : 3;
  return `${formatDecimal(mean, decimals)} failures a unit (${formatDecimal(low, decimals)} to ${formatDecimal(high, decimals)})`;
}
