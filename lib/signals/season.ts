import { weeksPerYear } from "./weeks";

/** How many times the year's mean is expected in a week of the year; one wave a year. */
export interface Season {
  readonly cosine: number;
  readonly sine: number;
}

export const noSeason: Season = { cosine: 0, sine: 0 };

const weeksOfSolarYear = 365.2425 / 7;
/** The wave must raise the likelihood this much: a chance of 1 in 1,000 with two free numbers (chi-square / 2 = ln 1000). */
const leastGain = Math.log(1000);
const leastWeeks = 2 * weeksPerYear;

/**
 * The yearly wave in weekly counts of one product type, by Poisson regression of the counts on one sine wave with the
 * expected counts as offset. None is believed with less than two years of counts, or where luck explains the wave.
 * @param weeks  running number of each week with its count, 0 or more, and its expectation, above 0 where it is used
 * Source: Serfling (1963), Public Health Reports 78, 494-506, for one wave a year; Newton's method for the likelihood.
 * Checked: tests/signals/season.test.ts, by recovery of a known wave and by even counts.
 */
export function seasonOf(weeks: readonly SeasonWeek[]): Season {
  const used = weeks.filter(({ expected }) => expected > 0);
  if (used.length < leastWeeks) return noSeason;
  const observed = used.reduce((sum, week) => sum + week.observed, 0);
  if (observed === 0) return noSeason;
  // From the best even level: Newton's method runs away from a level that is far off.
  let [level, cosine, sine] = [Math.log(observed / used.reduce((sum, week) => sum + week.expected, 0)), 0, 0];
  for (let round = 0; round < 8; round++) {
    const step = newtonStep(used, [level, cosine, sine]);
    if (step === undefined) return noSeason;
    level += step[0];
    cosine += step[1];
    sine += step[2];
  }
  const swing = Math.hypot(cosine, sine);
  if (!(swing < 2) || gain(used, [level, cosine, sine]) < leastGain) return noSeason;
  return { cosine, sine };
}

export interface SeasonWeek {
  readonly week: number;
  readonly observed: number;
  readonly expected: number;
}

export function seasonFactor({ cosine, sine }: Season, week: number): number {
  if (cosine === 0 && sine === 0) return 1;
  const angle = (2 * Math.PI * week) / weeksOfSolarYear;
  return Math.exp(cosine * Math.cos(angle) + sine * Math.sin(angle)) / meanOfWave(Math.hypot(cosine, sine));
}

/** Mean of exp(a cos x) over a turn: the modified Bessel function I0, by its series. */
function meanOfWave(swing: number): number {
  let [term, sum] = [1, 1];
  for (let k = 1; k < 30; k++) sum += term *= (swing / 2 / k) ** 2;
  return sum;
}

type Three = readonly [number, number, number];

function newtonStep(weeks: readonly SeasonWeek[], at: Three): Three | undefined {
  const slope = [0, 0, 0];
  const bend = [0, 0, 0, 0, 0, 0];
  for (const { week, observed, expected } of weeks) {
    const wave = waveOf(week);
    const mean = expected * Math.exp(at[0] + at[1] * wave[1] + at[2] * wave[2]);
    wave.forEach((x, i) => {
      slope[i] = (slope[i] ?? 0) + (observed - mean) * x;
    });
    const products = [1, wave[1], wave[2], wave[1] ** 2, wave[1] * wave[2], wave[2] ** 2];
    products.forEach((product, i) => {
      bend[i] = (bend[i] ?? 0) + mean * product;
    });
  }
  return solveThree(bend, slope);
}

/** Symmetric three by three system, given as its six entries, by Cramer's rule. */
function solveThree(m: readonly number[], v: readonly number[]): Three | undefined {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = m;
  const [x = 0, y = 0, z = 0] = v;
  const determinant = a * (d * f - e * e) - b * (b * f - c * e) + c * (b * e - c * d);
  if (!(determinant > 0)) return undefined;
  return [
    (x * (d * f - e * e) - b * (y * f - e * z) + c * (y * e - d * z)) / determinant,
    (a * (y * f - e * z) - x * (b * f - c * e) + c * (b * z - c * y)) / determinant,
    (a * (d * z - e * y) - b * (b * z - c * y) + x * (b * e - c * d)) / determinant,
  ];
}

/** How much likelier the counts are with the wave than with the best even level. */
function gain(weeks: readonly SeasonWeek[], at: Three): number {
  const observed = weeks.reduce((sum, week) => sum + week.observed, 0);
  const expected = weeks.reduce((sum, week) => sum + week.expected, 0);
  const even = observed === 0 ? 0 : Math.log(observed / expected);
  return weeks.reduce((sum, { week, observed: count, expected: mean }) => {
    const wave = waveOf(week);
    const log = at[0] + at[1] * wave[1] + at[2] * wave[2];
    return sum + count * (log - even) - mean * (Math.exp(log) - Math.exp(even));
  }, 0);
}

function waveOf(week: number): Three {
  const angle = (2 * Math.PI * week) / weeksOfSolarYear;
  return [1, Math.cos(angle), Math.sin(angle)];
}
