/** A point with its two-sided limits, all in one unit. */
export interface Interval {
  readonly point: number;
  readonly low: number;
  readonly high: number;
}
