/** A standard error and a two-sided interval, in the unit of the estimate, or the reason why there are none. */
export type Limits =
  | { readonly kind: "limits"; readonly standardError: number; readonly low: number; readonly high: number }
  | NoLimits;

export type NoLimits = {
  readonly kind: "no-limits";
  /**
   * `nobody-left`: nobody (or for a sample variance a single one) is left at risk to judge the error by.
   * `negative-variance`: the chosen variance estimate came out below zero.
   */
  readonly reason: "nobody-left" | "negative-variance";
};

export const NOBODY_LEFT: NoLimits = { kind: "no-limits", reason: "nobody-left" };
export const NEGATIVE_VARIANCE: NoLimits = { kind: "no-limits", reason: "negative-variance" };

export function limits(standardError: number, low: number, high: number): Limits {
  return { kind: "limits", standardError, low, high };
}
