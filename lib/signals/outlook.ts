import { observedOverExpected } from "@/lib/statistics/intervals/observed-over-expected";

/** How much more than expected there was since the onset, and what that means for the half-year to come. */
export interface Outlook {
  readonly ratio: { readonly point: number; readonly low: number; readonly high: number };
  readonly extraSoFar: { readonly point: number; readonly low: number; readonly high: number };
  readonly extraAhead: { readonly point: number; readonly low: number; readonly high: number };
}

/**
 * Extra failures so far and in the half-year to come, if the ratio since the onset stays as it is.
 * The onset was chosen by the data where the counts turned up, so the ratio errs a little upwards; the page says so.
 * Source: Breslow & Day (1987), vol. II, for the exact limits of observed over expected.
 * Checked: tests/signals/outlook.test.ts, by hand and against case P08.
 */
export function outlookOf({ observed, expected, expectedAhead, level }: OutlookInput): Outlook {
  const { point, low, high } = observedOverExpected({ observed, expected, confidence: level });
  const extra = (mean: number) => ({ point: (point - 1) * mean, low: (low - 1) * mean, high: (high - 1) * mean });
  return { ratio: { point, low, high }, extraSoFar: extra(expected), extraAhead: extra(expectedAhead) };
}

export interface OutlookInput {
  readonly observed: number;
  readonly expected: number;
  readonly expectedAhead: number;
  readonly level: number;
}
