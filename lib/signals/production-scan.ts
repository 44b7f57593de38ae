import { seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { requireNonNegative, requirePositive, requireWholeNumber } from "@/lib/statistics/require";

/**
 * The run of production weeks in which failures crowd most, and how often luck would crowd them so somewhere: every run up
 * to a longest length is tried, and the best one is held against the best ones of arrangements drawn by chance, each
 * failure falling into a week in proportion to what is expected of it. Looking at every run is thereby paid for.
 * @param weeks    one per production week, in order and without gaps: failures (whole number) and what the rest predicts,
 *   0 or more, on any scale
 * @param longest  longest run in weeks, 1 or more
 * @param draws    arrangements drawn, 19 or more; the chance can't fall below 1 / (draws + 1)
 * @returns places of the first and last week of the run, its failures, its share of the expectation given the total, and
 *   the chance; "too-few" under three failures or with fewer than two weeks that could have any
 * @throws RangeError for an argument outside its range
 * Source: Kulldorff (1997), Communications in Statistics 26, 1481-1496 (likelihood ratio of the best window, chance by
 *   Monte Carlo as in Dwass 1957); conditional on the total as in Glaz, Naus & Wallenstein (2001), Scan Statistics.
 * Checked: tests/signals/production-scan.test.ts, against case D04 (windows of one week), by listing and by simulation.
 */
export function productionScan({ weeks, longest, draws, seed }: ScanInput): ProductionScan {
  requirePositive("longest", longest);
  requireWholeNumber("draws", draws);
  weeks.forEach(({ failures, expected }, i) => {
    requireWholeNumber(`weeks[${i}].failures`, failures);
    requireNonNegative(`weeks[${i}].expected`, expected);
  });
  const shares = sharesOf(weeks);
  // A failure of a week of which nothing is expected has no share to be measured by.
  const counts = weeks.map(({ failures, expected }) => (expected > 0 ? failures : 0));
  const total = counts.reduce((sum, count) => sum + count, 0);
  if (total < 3 || shares.filter((share) => share > 0).length < 2) return { kind: "too-few", failures: total };
  const table = tableOf(shares, total, longest);
  const best = bestRun(counts, table);
  const run = { ...best, share: table.share[best.first * longest + best.last - best.first] ?? 0 };
  const chance = seededDraws(seed);
  const place = placing(cumulate(shares));
  const needed = neededFor(best.gain - 1e-9, table);
  const drawn = new Int32Array(counts.length);
  let asGood = 0;
  for (let draw = 0; draw < draws; draw++) {
    drawn.fill(0);
    for (let one = 0; one < total; one++) {
      const week = place(chance.uniform());
      drawn[week] = (drawn[week] ?? 0) + 1;
    }
    if (reaches(drawn, needed, longest)) asGood += 1;
  }
  return { kind: "run", ...run, total, chance: (asGood + 1) / (draws + 1) };
}

export interface ScanInput {
  readonly weeks: readonly { readonly failures: number; readonly expected: number }[];
  readonly longest: number;
  readonly draws: number;
  readonly seed: number;
}

export type ProductionScan =
  | {
      readonly kind: "run";
      readonly first: number;
      readonly last: number;
      readonly failures: number;
      /** Of the total, if failures went by expectation alone. */
      readonly share: number;
      readonly total: number;
      readonly chance: number;
    }
  | { readonly kind: "too-few"; readonly failures: number };

interface Run {
  readonly first: number;
  readonly last: number;
  readonly failures: number;
  readonly gain: number;
}

/** What is the same for every arrangement. */
interface RunTable {
  readonly total: number;
  readonly longest: number;
  /** By first week × longest + length - 1: share of the run, and the logarithms of it and of the rest. */
  readonly share: Float64Array;
  readonly logShare: Float64Array;
  readonly logRest: Float64Array;
  /** n·ln n for each number of failures. */
  readonly entropy: Float64Array;
}

function tableOf(shares: readonly number[], total: number, longest: number): RunTable {
  const share = new Float64Array(shares.length * longest);
  for (let first = 0; first < shares.length; first++) {
    let sum = 0;
    for (let last = first; last < Math.min(shares.length, first + longest); last++) {
      sum += shares[last] ?? 0;
      share[first * longest + last - first] = sum;
    }
  }
  const entropy = Float64Array.from({ length: total + 1 }, (_, count) => (count === 0 ? 0 : count * Math.log(count)));
  const logRest = share.map((one) => Math.log(Math.max(0, 1 - one)));
  return { total, longest, share, logShare: share.map(Math.log), logRest, entropy };
}

function bestRun(counts: ArrayLike<number>, table: RunTable): Run {
  const { total, longest, share } = table;
  let best: Run = { first: 0, last: 0, failures: 0, gain: 0 };
  for (let first = 0; first < counts.length; first++) {
    if ((counts[first] ?? 0) === 0) continue; // the best run begins with a failure
    let failures = 0;
    for (let last = first; last < Math.min(counts.length, first + longest); last++) {
      const count = counts[last] ?? 0;
      if (count === 0) continue;
      failures += count;
      const at = first * longest + last - first;
      const own = share[at] ?? 1;
      if (failures <= total * own || own >= 1) continue;
      const gain = gainOf(failures, at, table);
      if (gain > best.gain) best = { first, last, failures, gain };
    }
  }
  return best;
}

/** Log-likelihood that the run has a rate of its own, over that of one rate for all. */
function gainOf(failures: number, at: number, { total, logShare, logRest, entropy }: RunTable): number {
  const rest = total - failures;
  const inside = (entropy[failures] ?? 0) - failures * (logShare[at] ?? 0);
  const outside = rest === 0 ? 0 : (entropy[rest] ?? 0) - rest * (logRest[at] ?? 0);
  return inside + outside - (entropy[total] ?? 0);
}

/**
 * Fewest failures with which each run is as good as that, more than all where none are enough: a run gains with every
 * failure above its share, so that hundreds of arrangements are tried by comparing whole numbers.
 */
function neededFor(gain: number, table: RunTable): Int32Array {
  const { total, share } = table;
  return Int32Array.from(share, (own, at) => {
    if (own <= 0 || own >= 1) return total + 1;
    let [low, high] = [Math.floor(total * own) + 1, total + 1];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (gainOf(middle, at, table) >= gain) high = middle;
      else low = middle + 1;
    }
    return low;
  });
}

function reaches(counts: Int32Array, needed: Int32Array, longest: number): boolean {
  for (let first = 0; first < counts.length; first++) {
    if (counts[first] === 0) continue;
    const until = Math.min(counts.length - first, longest);
    let failures = 0;
    for (let length = 0; length < until; length++) {
      failures += counts[first + length] ?? 0;
      if (failures >= (needed[first * longest + length] ?? 0)) return true;
    }
  }
  return false;
}

function sharesOf(weeks: ScanInput["weeks"]): number[] {
  const sum = weeks.reduce((total, { expected }) => total + expected, 0);
  return weeks.map(({ expected }) => (sum > 0 ? expected / sum : 0));
}

function cumulate(shares: readonly number[]): Float64Array {
  let sum = 0;
  return Float64Array.from(shares, (share) => (sum += share));
}

const guides = 1024;

/** First week up to which the shares come to more than a number: looked for from where its thousandth begins. */
function placing(cumulative: Float64Array): (at: number) => number {
  const last = cumulative.length - 1;
  let place = 0;
  const guide = Int32Array.from({ length: guides }, (_, step) => {
    while (place < last && (cumulative[place] ?? 1) <= step / guides) place += 1;
    return place;
  });
  return (at) => {
    let week = guide[Math.floor(at * guides)] ?? 0;
    while (week < last && (cumulative[week] ?? 1) <= at) week += 1;
    return week;
  };
}
