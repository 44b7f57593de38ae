import { formatDecimal } from "./format-decimal";

/** A share in 0..1 as people say it, with what its range supports: "12 in 100 (8 to 17)". */
export function describeShare(share: number, low: number, high: number): string {
  const decimals = decimalsOf(high - low);
  return `${formatShare(share, decimals)} in 100 (${formatShare(low, decimals)} to ${formatShare(high, decimals)})`;
}

/** A share in 0..1 counted in 100. */
export function formatShare(share: number, decimals: number): string {
  return formatDecimal(100 * share, decimals);
}

function decimalsOf(width: number): number {
  return width >= 0.02 ? 0 : width >= 0.002 ? 1 : 2;
}
