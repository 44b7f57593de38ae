import { negativeBinomialAtLeast, negativeBinomialQuantile } from "@/lib/statistics/discrete/negative-binomial";
import { poissonAtLeast, poissonQuantile } from "@/lib/statistics/discrete/poisson";
import { requireNonNegative, requirePositive } from "@/lib/statistics/require";
import type { CellKey } from "./signal-record";

/** One group over the last four whole quarters: what was counted, and what others of its ages would have had. */
export interface FunnelCell {
  readonly key: CellKey;
  readonly observed: number;
  readonly expected: number;
}

/** All groups of a company at once: how many were looked at, how many lie beyond the limits, and how many luck puts there. */
export interface CellFunnel {
  readonly groups: number;
  /** Standard deviation of true ratios between groups that is allowed for; 0: chance explains all there is. */
  readonly spread: number;
  readonly beyond: { readonly outer: Beyond; readonly inner: Beyond };
  /** Every group beyond the inner limit, and the largest of the others: as many as a drawing can bear. */
  readonly drawn: readonly FunnelCell[];
}

export interface Beyond {
  readonly counted: number;
  readonly byLuck: number;
}

/** Upper ends of the limits that 95 and 99.8 in 100 groups keep. */
const [inner, outer] = [0.975, 0.999] as const;
/** More dots than this hide each other. Own choice, no source. */
const mostDrawn = 150;

/**
 * The funnel of observed over expected: groups beyond each upper limit, and how many chance alone would put there, added
 * up exactly over the groups. Where groups differ anyway, the limits are those of counts with a gamma distributed ratio.
 * @param cells   expected above 0
 * @param spread  standard deviation of the true ratios between groups, 0 or more
 * Source: Spiegelhalter (2005), Statistics in Medicine 24, 1185-1202, with the random-effects form of his (2005), Quality
 *   and Safety in Health Care 14, 347-351.
 * Checked: tests/signals/cell-funnel.test.ts, by listing every outcome of every group.
 */
export function cellFunnel(cells: readonly FunnelCell[], spread: number): CellFunnel {
  const limited = cells.map((cell) => ({ cell, at: upperLimits(cell.expected, spread) }));
  const beyond = (pick: "inner" | "outer") => ({
    counted: limited.filter(({ cell, at }) => cell.observed > at[pick]).length,
    byLuck: limited.reduce((sum, { cell, at }) => sum + atLeast(at[pick] + 1, cell.expected, spread), 0),
  });
  const outside = limited.filter(({ cell, at }) => cell.observed > at.inner).map(({ cell }) => cell);
  const inside = limited
    .filter(({ cell, at }) => cell.observed <= at.inner)
    .map(({ cell }) => cell)
    .toSorted((a, b) => b.expected - a.expected);
  return {
    groups: cells.length,
    spread,
    beyond: { inner: beyond("inner"), outer: beyond("outer") },
    drawn: [...outside, ...inside.slice(0, Math.max(0, mostDrawn - outside.length))],
  };
}

/** Largest counts that lie within the inner and the outer limit of a group. */
export function ratioLimits(
  expected: number,
  spread: number,
): { readonly lowOuter: number; readonly lowInner: number; readonly inner: number; readonly outer: number } {
  const at = (probability: number) => quantileOf(probability, expected, spread);
  return { lowOuter: at(1 - outer), lowInner: at(1 - inner), ...upperLimits(expected, spread) };
}

function upperLimits(expected: number, spread: number): { readonly inner: number; readonly outer: number } {
  return { inner: quantileOf(inner, expected, spread), outer: quantileOf(outer, expected, spread) };
}

function quantileOf(probability: number, expected: number, spread: number): number {
  requirePositive("expected", expected);
  requireNonNegative("spread", spread);
  return spread === 0
    ? poissonQuantile(probability, expected)
    : negativeBinomialQuantile(probability, { size: 1 / spread ** 2, mean: expected });
}

function atLeast(count: number, expected: number, spread: number): number {
  return spread === 0
    ? poissonAtLeast(count, expected)
    : negativeBinomialAtLeast(count, { size: 1 / spread ** 2, mean: expected });
}
