import { binomialAtLeast, binomialAtMost, binomialProbability } from "../discrete/binomial";
import { logGamma } from "../log-gamma";
import { bracketedRoot } from "../special/bracketed-root";

/**
 * The binomial interval that matches the minimum-likelihood p-value: from the smallest to the largest chance whose
 * p-value exceeds 1 − confidence, as limits of the odds.
 * The p-value jumps where another outcome becomes as unlikely as the observed one. Between two jumps it falls and
 * then rises, never the reverse, so on the way up the first crossing is either a jump or one root.
 * Source: Blaker (2000), Canadian Journal of Statistics 28, 783-798; Fay (2010), R Journal 2(1), 53-58.
 * Checked: tests/statistics/rate-ratio.test.ts, by scanning the p-value.
 */
export function minimumLikelihoodLimits({ events, trials, confidence }: Trials): { low: number; high: number } {
  const allowed = 1 - confidence;
  const low = lowestOdds({ events, trials, allowed });
  const high =
    events === trials ? Number.POSITIVE_INFINITY : 1 / lowestOdds({ events: trials - events, trials, allowed });
  return { low, high };
}

interface Trials {
  readonly events: number;
  readonly trials: number;
  readonly confidence: number;
}

/** Sum of the probabilities of all outcomes no likelier than the observed one, with a hair of slack for ties. */
export function minimumLikelihoodP({
  events,
  trials,
  chance,
}: {
  events: number;
  trials: number;
  chance: number;
}): number {
  const limit = binomialProbability(events, { trials, chance }) * (1 + 1e-7);
  const mode = Math.min(trials, Math.floor((trials + 1) * chance));
  if (events === mode) return 1;
  const unlikely = (count: number) => binomialProbability(count, { trials, chance }) <= limit;
  if (events < mode) {
    const from = firstUnlikely(mode, trials, unlikely);
    return Math.min(1, binomialAtMost(events, { trials, chance }) + binomialAtLeast(from, { trials, chance }));
  }
  const to = lastUnlikely(mode, unlikely);
  return Math.min(1, binomialAtLeast(events, { trials, chance }) + binomialAtMost(to, { trials, chance }));
}

/** Smallest count from the mode up whose probability has sunk to the limit; trials + 1 if none has. */
function firstUnlikely(mode: number, trials: number, unlikely: (count: number) => boolean): number {
  let low = mode;
  let high = trials + 1;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (unlikely(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** Largest count below the mode whose probability has sunk to the limit; -1 if none has. */
function lastUnlikely(mode: number, unlikely: (count: number) => boolean): number {
  let low = -1;
  let high = mode;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (unlikely(middle)) low = middle;
    else high = middle;
  }
  return low;
}

function lowestOdds({ events, trials, allowed }: { events: number; trials: number; allowed: number }): number {
  if (events === 0) return 0;
  const chanceOf = (logOdds: number) => 1 / (1 + Math.exp(-logOdds));
  const excess = (k: number) => (logOdds: number) => {
    const chance = chanceOf(logOdds);
    return binomialAtLeast(events, { trials, chance }) + binomialAtMost(k, { trials, chance }) - allowed;
  };
  let from = Math.log(1e-12 / trials);
  for (let k = -1; k < events; k++) {
    const to = k === events - 1 ? 700 : jumpAt({ events, trials, count: k + 1 });
    if (excess(k)(from) > 0) return Math.exp(from);
    if (excess(k)(to) > 0) return Math.exp(bracketedRoot(excess(k), from, to));
    from = to;
  }
  return Math.exp(from);
}

/** Log-odds at which `count` (below `events`) is exactly as likely as `events`. */
function jumpAt({ events, trials, count }: { events: number; trials: number; count: number }): number {
  const logWays = (k: number) => logGamma(trials + 1) - logGamma(k + 1) - logGamma(trials - k + 1);
  return (logWays(count) - logWays(events)) / (events - count);
}
