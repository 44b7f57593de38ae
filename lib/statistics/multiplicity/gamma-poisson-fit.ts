import { logGamma } from "../log-gamma";
import { requirePositive, requireWholeNumber } from "../require";
import { bracketedRoot } from "../special/bracketed-root";
import { digamma } from "../special/digamma";

/**
 * How failure rates vary between groups: the gamma distribution of rates under which the counts are likeliest
 * (marginal maximum likelihood of the negative binomial).
 * @param groups events (whole number, 0 or more) over exposure (above 0, same unit); at least two groups
 * @returns shape and rate (exposure) of the gamma, whose mean is shape / rate; or "no-excess-spread" where the
 *   counts vary no more than chance alone would make them, with the common rate; or "no-events"
 * @throws RangeError for an argument outside its range
 * Source: Clayton & Kaldor (1987), Biometrics 43, 671-681; Gaver & O'Muircheartaigh (1987), Technometrics 29, 1-15.
 * Checked: tests/statistics/multiplicity.test.ts (case H03), and against direct maximisation in R.
 */
export function gammaPoissonFit(groups: readonly GroupCount[]): GammaPoissonFit {
  requireGroups(groups);
  const events = groups.reduce((sum, group) => sum + group.events, 0);
  const exposure = groups.reduce((sum, group) => sum + group.exposure, 0);
  if (events === 0) return { kind: "no-events" };
  const common = { kind: "no-excess-spread", commonRate: events / exposure } as const;
  const candidates = turningPoints(groups);
  const best = candidates
    .map((logShape) => ({ logShape, value: profile(groups, logShape) }))
    .reduce<Candidate | undefined>((top, one) => (top === undefined || one.value > top.value ? one : top), undefined);
  if (best === undefined || best.value <= profile(groups, MOST_LOG_SHAPE)) return common;
  const shape = Math.exp(best.logShape);
  return { kind: "fitted", shape, rate: shape / meanGiven(groups, shape) };
}

export interface GroupCount {
  readonly events: number;
  readonly exposure: number;
}

export type GammaPoissonFit =
  | { readonly kind: "fitted"; readonly shape: number; readonly rate: number }
  | { readonly kind: "no-excess-spread"; readonly commonRate: number }
  | { readonly kind: "no-events" };

interface Candidate {
  readonly logShape: number;
  readonly value: number;
}

/** Beyond this shape (e^16) the spread of rates is below one part in a thousand and counts as none. */
const MOST_LOG_SHAPE = 16;
const LEAST_LOG_SHAPE = -10;

/** Every maximum of the profile likelihood over the shape: where its slope turns from rising to falling. */
function turningPoints(groups: readonly GroupCount[]): readonly number[] {
  const slope = (logShape: number) => profileSlope(groups, Math.exp(logShape));
  const points: number[] = [];
  for (let from = LEAST_LOG_SHAPE; from < MOST_LOG_SHAPE; from += 0.5) {
    if (slope(from) > 0 && slope(from + 0.5) <= 0) points.push(bracketedRoot(slope, from, from + 0.5));
  }
  return points;
}

/** Derivative of the log-likelihood in the shape, at the mean rate that is best for that shape. */
function profileSlope(groups: readonly GroupCount[], shape: number): number {
  const mean = meanGiven(groups, shape);
  return groups.reduce((sum, { events, exposure }) => {
    const expected = mean * exposure;
    const gain = digamma(shape + events) - digamma(shape) - Math.log1p(expected / shape);
    return sum + gain + (expected - events) / (shape + expected);
  }, 0);
}

function profile(groups: readonly GroupCount[], logShape: number): number {
  const shape = Math.exp(logShape);
  const mean = meanGiven(groups, shape);
  return groups.reduce((sum, { events, exposure }) => {
    const expected = mean * exposure;
    const ways = logGamma(shape + events) - logGamma(shape);
    return sum + ways - shape * Math.log1p(expected / shape) + events * Math.log(expected / (shape + expected));
  }, 0);
}

/** Mean rate that is likeliest for a given shape: the zero of Σ (events − μ t) / (shape + μ t), falling in μ. */
function meanGiven(groups: readonly GroupCount[], shape: number): number {
  const rates = groups.map(({ events, exposure }) => events / exposure);
  const low = Math.min(...rates);
  const high = Math.max(...rates);
  if (low === high) return low;
  const score = (mean: number) =>
    groups.reduce((sum, { events, exposure }) => sum + (events - mean * exposure) / (shape + mean * exposure), 0);
  return bracketedRoot(score, low, high);
}

function requireGroups(groups: readonly GroupCount[]): void {
  if (groups.length < 2) throw new RangeError(`groups must hold at least two groups; it holds ${groups.length}`);
  groups.forEach(({ events, exposure }, i) => {
    requireWholeNumber(`groups[${i}].events`, events);
    requirePositive(`groups[${i}].exposure`, exposure);
  });
}
