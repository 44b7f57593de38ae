import type { Estimate } from "@/lib/statistics/estimate";

/** What a rate or share is counted in: so many in 100, or in 1,000. A ratio is counted in times. */
export type EstimateFrame = 100 | 1000;

/**
 * The one frame in which all these estimates are said: 100, or 1,000 where every one of them lies below 1 in 100.
 * One table has one frame, so that its rows compare at a glance.
 */
export function frameFor(estimates: readonly Estimate[]): EstimateFrame {
  const figures = estimates.filter((estimate) => estimate.basis.kind !== "ratio").map(shownValue);
  return figures.length > 0 && figures.every((value) => value < 0.01) ? 1000 : 100;
}

/** What multiplies the natural unit of an estimate before it is shown. */
export function scaleOf(estimate: Estimate, frame: EstimateFrame): number {
  return estimate.basis.kind === "ratio" ? 1 : frame;
}

/**
 * Decimals that the interval supports: whole numbers unless lo..hi is narrower than 2 of them, and so on by tens.
 * A ratio starts at one decimal, because 1 and 2 times are far apart.
 */
export function decimalsFor(estimate: Estimate, frame: EstimateFrame): number {
  const scale = scaleOf(estimate, frame);
  const width = (estimate.hi - estimate.lo) * scale;
  if (estimate.basis.kind === "ratio") return width < 0.2 ? 2 : estimate.hi < 100 ? 1 : 0;
  return width >= 2 ? 0 : width >= 0.2 ? 1 : 2;
}

/** With no event the point is 0 and says nothing; the upper limit is what gets said. */
function shownValue(estimate: Estimate): number {
  return estimate.events === 0 ? estimate.hi : estimate.point;
}
