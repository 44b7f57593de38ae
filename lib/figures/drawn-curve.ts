import { formatCount } from "@/lib/format/format-count";

/** Two axes from 0: months of age, and a number per unit whose unit is said in words. */
export interface CurveAxes {
  /** "failed, in 100" */
  readonly unit: string;
  readonly maxMonths: number;
  /** In the natural unit: a share of 1, or failures per unit. */
  readonly maxShare: number;
  readonly monthTicks: readonly number[];
  readonly shareTicks: readonly number[];
}

/** A line that rises in steps, with its range and the counts that stand under its axis. */
export interface DrawnCurve extends CurveAxes {
  /** Corners of the line, from age 0 and share 0. */
  readonly points: readonly CurvePoint[];
  /** The age at which the line ends. */
  readonly endMonths: number;
  /** Why it ends before the last age watched; undefined where it does not. */
  readonly stopped: string | undefined;
  readonly under: readonly CountsUnder[];
}

export interface CurvePoint {
  readonly months: number;
  readonly failed: number;
  readonly low: number;
  readonly high: number;
  readonly atRisk: number;
  readonly spoken: string;
}

/** One line of counts under the axis. */
export interface CountsUnder {
  readonly name: string;
  readonly at: readonly { readonly months: number; readonly count: number }[];
}

/** One more failure may move the line by at most this share; own choice on the rule of Gebski and others (2018). */
export const largestJump = 0.05;
export const stopRule = "where too few were left: one more failure would move it by more than 5 in 100.";

/** Axes that hold a line up to an age and a height. */
export function axesFor(unit: string, endMonths: number, height: number): CurveAxes {
  const monthTicks = ticksTo(endMonths, [1, 3, 6, 12, 24, 36, 60, 120]);
  const shareTicks = ticksTo(height, [0.01, 0.02, 0.05, 0.1, 0.2, 0.25, 0.5, 1, 2, 5]);
  return {
    unit,
    monthTicks,
    shareTicks,
    maxMonths: monthTicks.at(-1) ?? endMonths,
    maxShare: shareTicks.at(-1) ?? height,
  };
}

/** The wider of two axes each way, so that both lines stand on one drawing. */
export function sharedAxes(first: CurveAxes, second: CurveAxes): CurveAxes {
  const longer = first.maxMonths >= second.maxMonths ? first : second;
  const higher = first.maxShare >= second.maxShare ? first : second;
  return {
    unit: first.unit,
    maxMonths: longer.maxMonths,
    monthTicks: longer.monthTicks,
    maxShare: higher.maxShare,
    shareTicks: higher.shareTicks,
  };
}

/** Counts far enough apart to be read on a phone: at multiples of whole years, six steps along the axis at most. */
export function readableCounts({ at }: CountsUnder, { maxMonths }: CurveAxes): CountsUnder["at"] {
  const apart = 12 * Math.max(1, Math.ceil(maxMonths / (6 * 12) - 1e-9));
  return at.filter(({ months }) => Math.abs(months / apart - Math.round(months / apart)) < 1e-6);
}

/** "by 26 months". */
export function byMonths(months: number): string {
  return `by ${formatCount(months)} months`;
}

/** 0 and multiples of the smallest of these steps that needs at most six of them. */
function ticksTo(end: number, steps: readonly number[]): number[] {
  const largest = steps.at(-1) ?? 1;
  const step = steps.find((size) => Math.ceil(end / size - 1e-9) <= 6) ?? largest * Math.ceil(end / (6 * largest));
  return Array.from({ length: Math.max(1, Math.ceil(end / step - 1e-9)) + 1 }, (_, i) => i * step);
}
