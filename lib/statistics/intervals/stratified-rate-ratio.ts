import { requirePositive, requireProbability, requireWholeNumber } from "../require";
import { bracketedRoot } from "../special/bracketed-root";
import type { CountInGroup, RateRatio } from "./rate-ratio";

/**
 * One ratio of event rates common to several strata (ages), exact given the total count of each stratum: the first group's
 * events in a stratum are then binomial, and their sum over strata is the statistic. Unlike observed over expected it
 * carries the doubt of both groups. With a single stratum it is `rateRatio`.
 * @param strata      one entry per stratum: events (whole number, 0 or more) over exposure (above 0, same unit) of both
 *                    groups; a stratum that only one group has says nothing about the ratio and must be left out
 * @param confidence  two-sided level in (0, 1); central: half of the doubt on each side
 * @returns point: the conditional maximum-likelihood ratio; "no-upper-limit" when the second group has no events
 * @throws RangeError for an argument outside its range
 * Source: Breslow and Day (1987), Statistical Methods in Cancer Research, volume II, section 3.4; Martin and Austin
 * (1996), Epidemiology 7, 29-33 (exact limits from the product of binomials); both cited from memory.
 * Checked: tests/statistics/stratified-rate-ratio.test.ts, by enumeration of all outcomes and against `rateRatio`.
 */
export function stratifiedRateRatio({ strata, confidence }: StratifiedRateRatioInput): RateRatio {
  requireProbability("confidence", confidence);
  strata.forEach(requireStratum);
  const telling = strata
    .map(({ first, second }) => ({
      trials: first.events + second.events,
      odds: Math.log(first.exposure / second.exposure),
    }))
    .filter(({ trials }) => trials > 0);
  const events = strata.reduce((sum, { first }) => sum + first.events, 0);
  const trials = telling.reduce((sum, stratum) => sum + stratum.trials, 0);
  if (trials === 0) return { kind: "no-events" };
  const tail = (1 - confidence) / 2;
  const atLeast = (logRatio: number) => tails(telling, events, logRatio).atLeast;
  const atMost = (logRatio: number) => tails(telling, events, logRatio).atMost;
  const even = tails(telling, events, 0);
  const pValue = Math.min(1, 2 * Math.min(even.atLeast, even.atMost));
  const centre = crudeLogRatio(strata);
  const low = events === 0 ? 0 : Math.exp(risingRoot((at) => atLeast(at) - tail, centre));
  if (events === trials) return { kind: "no-upper-limit", low, pValue };
  const high = Math.exp(risingRoot((at) => tail - atMost(at), centre));
  const point = events === 0 ? 0 : Math.exp(risingRoot((at) => expected(telling, at) - events, centre));
  return { kind: "ratio", point, low, high, pValue };
}

export interface StratifiedRateRatioInput {
  readonly strata: readonly { readonly first: CountInGroup; readonly second: CountInGroup }[];
  readonly confidence: number;
}

/** Events of both groups together, and the log odds of one falling in the first when the rates are equal. */
interface Stratum {
  readonly trials: number;
  readonly odds: number;
}

function requireStratum({ first, second }: StratifiedRateRatioInput["strata"][number], i: number): void {
  for (const [name, group] of Object.entries({ first, second })) {
    requireWholeNumber(`strata[${i}].${name}.events`, group.events);
    requirePositive(`strata[${i}].${name}.exposure`, group.exposure);
  }
}

/** Where to begin to look: the ratio of the totals, with half an event in each so that it is finite. */
function crudeLogRatio(strata: StratifiedRateRatioInput["strata"]): number {
  const sum = (of: (stratum: StratifiedRateRatioInput["strata"][number]) => number) =>
    strata.reduce((total, stratum) => total + of(stratum), 0);
  const first = (sum((one) => one.first.events) + 0.5) / sum((one) => one.first.exposure);
  const second = (sum((one) => one.second.events) + 0.5) / sum((one) => one.second.exposure);
  return Math.log(first / second);
}

function chanceAt({ odds }: Stratum, logRatio: number): number {
  return 1 / (1 + Math.exp(-odds - logRatio));
}

function expected(strata: readonly Stratum[], logRatio: number): number {
  return strata.reduce((sum, stratum) => sum + stratum.trials * chanceAt(stratum, logRatio), 0);
}

/** P(sum of the binomials >= events) and P(<= events), from the distribution of the sum. */
function tails(strata: readonly Stratum[], events: number, logRatio: number): { atLeast: number; atMost: number } {
  const sum = strata
    .map((stratum) => binomialCore(stratum.trials, chanceAt(stratum, logRatio)))
    .reduce(convolved, { from: 0, masses: Float64Array.of(1) });
  let [above, below] = [0, 0];
  sum.masses.forEach((mass, i) => {
    if (sum.from + i >= events) above += mass;
    if (sum.from + i <= events) below += mass;
  });
  return { atLeast: Math.min(1, above), atMost: Math.min(1, below) };
}

interface Masses {
  readonly from: number;
  readonly masses: Float64Array;
}

/** What is rarer than this, beside the most likely count, cannot move a tail that anybody asks for. */
const negligible = 1e-20;

/** The masses of a binomial around its mode, both ways until negligible, normed to 1. */
function binomialCore(trials: number, chance: number): Masses {
  const mode = Math.min(trials, Math.floor((trials + 1) * chance));
  const odds = chance / (1 - chance);
  const upwards: number[] = [1];
  for (let k = mode, mass = 1; k < trials && mass > negligible; k++) {
    mass *= ((trials - k) / (k + 1)) * odds;
    upwards.push(mass);
  }
  const downwards: number[] = [];
  for (let k = mode, mass = 1; k > 0 && mass > negligible; k--) {
    mass *= k / (trials - k + 1) / odds;
    downwards.push(mass);
  }
  const all = Float64Array.from([...downwards.reverse(), ...upwards]);
  const total = all.reduce((sum, mass) => sum + mass, 0);
  return { from: mode - downwards.length, masses: all.map((mass) => mass / total) };
}

/** Plain loops: this is where a comparison of large groups spends its time. */
function convolved(a: Masses, b: Masses): Masses {
  const masses = new Float64Array(a.masses.length + b.masses.length - 1);
  for (let i = 0; i < a.masses.length; i++) {
    const left = a.masses[i] ?? 0;
    for (let j = 0; j < b.masses.length; j++) masses[i + j] = (masses[i + j] ?? 0) + left * (b.masses[j] ?? 0);
  }
  return { from: a.from + b.from, masses };
}

/** Zero of a function that rises with the log ratio, looked for outwards from a likely place. */
function risingRoot(value: (logRatio: number) => number, centre: number): number {
  let [from, to] = [centre - 0.5, centre + 0.5];
  for (let arm = 1; value(from) > 0 && arm < 1000; arm *= 2) from -= arm;
  for (let arm = 1; value(to) < 0 && arm < 1000; arm *= 2) to += arm;
  return bracketedRoot(value, from, to);
}
