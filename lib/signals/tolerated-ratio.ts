import type { AgainstRest } from "./rest-rates";

/**
 * Ratio of observed to expected up to which nothing is wrong with a cell. Cells of a company differ by a known spread, and
 * the expectation is itself in doubt: one standard deviation of both is tolerated. A cell with a history that shows it to
 * be no worse than others is allowed less, so that its turn for the worse is found sooner; never less than 1, and a bad
 * history never excuses more than the spread does.
 * @param spread  standard deviation of the true ratios between cells, 0 or more
 * Source: the posterior of a gamma distributed ratio given Poisson counts (Clayton & Kaldor 1987, Biometrics 43, 671-681);
 *   that one standard deviation is allowed is this project's own choice, made by `npm run bench -- signals`.
 * Checked: tests/signals/tolerated-ratio.test.ts, by hand.
 */
export function toleratedRatio({ observed, expected, relativeVariance }: AgainstRest, spread: number): number {
  const variance = spread ** 2 + relativeVariance;
  if (variance === 0) return 1;
  const most = 1 + Math.sqrt(variance);
  const shape = 1 / variance;
  const own = (shape + observed + Math.sqrt(shape + observed)) / (shape + expected);
  return Math.min(most, Math.max(1, own));
}
