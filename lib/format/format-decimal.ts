import { formatCount } from "./format-count";

const formatters = [0, 1, 2, 3].map(
  (digits) => new Intl.NumberFormat("en-US", { minimumFractionDigits: digits, maximumFractionDigits: digits }),
);

/** A number with a fixed count of decimals, 0 to 3, thousands marked. @throws RangeError for any other count of decimals */
export function formatDecimal(value: number, decimals: number): string {
  const formatter = formatters[decimals];
  if (formatter === undefined) throw new RangeError(`decimals must be 0, 1, 2 or 3; it is ${decimals}`);
  if (!Number.isFinite(value)) throw new RangeError(`value must be finite; it is ${value}`);
  return formatter.format(value === 0 ? 0 : value);
}

/** Exposure as people say it: whole from 10 upwards, one decimal below, two below 1. */
export function formatExposure(amount: number): string {
  if (amount >= 10) return formatCount(amount);
  if (amount >= 1) return formatDecimal(amount, 1);
  return amount > 0 && amount < 0.01 ? "under 0.01" : formatDecimal(amount, 2);
}
