import { chiSquareUpperTail } from "../chi-square-quantile";
import { requireWholeNumber } from "../require";
import { linearSystem } from "../special/linear-system";
import { ageFlows, type LifeSource } from "../survival/age-flows";
import type { WeibullFit } from "./fit-weibull";

/**
 * Does a fitted Weibull follow the failures age by age? Ages are cut so that the fit expects equally many failures in
 * each band; observed less expected is judged with the share of the spread that fitting used up taken out. Right with
 * censoring and late entry, where tests for complete samples do not hold.
 * @param source  the very rows that were fitted, exact and right-censored
 * @param fewest  failures expected in a band at least: whole number, 1 or more; no default (5 is usual)
 * @returns chi-square on one degree less than bands and the probability of one as large when the Weibull is true;
 *          `too-few-events` when fewer than three bands can be made
 * Source: Hjort (1990), Annals of Statistics 18, 1221-1258; for the Weibull, whose scale makes the sum of expected
 * failures meet the observed, Bagdonavicius and Nikulin (2011), Chi-squared goodness-of-fit test for right censored data; both cited from memory.
 * Checked: tests/statistics/life/banded-fit-test.test.ts, by simulation with a seed.
 */
export function bandedFitTest(fit: WeibullFit, source: LifeSource, { fewest }: { fewest: number }): BandedFitTest {
  requireWholeNumber("fewest", fewest);
  const count = Math.min(mostBands, Math.floor(fit.events / fewest));
  if (count < fewestBands) return { kind: "too-few-events", events: fit.events };
  const bands = cutBands(fit, source, count);
  const { mm, ms, ss } = fit.core.covariance;
  const kept = bands.slice(0, -1); // all of them add up to 0, so the last says nothing new
  const spread = kept.map((row, i) =>
    kept.map((column, j) => {
      const used = row.byM * (mm * column.byM + ms * column.byS) + row.byS * (ms * column.byM + ss * column.byS);
      return (i === j ? row.expected : 0) - used;
    }),
  );
  const gaps = kept.map(({ observed, expected }) => observed - expected);
  const weighed = linearSystem(spread, gaps);
  const chiSquare = Math.max(
    0,
    gaps.reduce((sum, gap, i) => sum + gap * (weighed[i] ?? 0), 0),
  );
  const degreesOfFreedom = bands.length - 1;
  return {
    kind: "tested",
    chiSquare,
    degreesOfFreedom,
    probability: chiSquareUpperTail(chiSquare, degreesOfFreedom),
    bands: bands.map(({ until, observed, expected }) => ({ until, observed, expected })),
  };
}

export type BandedFitTest =
  | {
      readonly kind: "tested";
      readonly chiSquare: number;
      readonly degreesOfFreedom: number;
      readonly probability: number;
      /** `until`: the age, included, at which the band ends. */
      readonly bands: readonly { readonly until: number; readonly observed: number; readonly expected: number }[];
    }
  | { readonly kind: "too-few-events"; readonly events: number };

const mostBands = 8;
const fewestBands = 3;

interface FittedBand {
  until: number;
  observed: number;
  expected: number;
  /** Slopes of the expected failures in location and log spread. */
  byM: number;
  byS: number;
}

/** Walks through the ages once; between two of them everybody at risk lives through the same piece of hazard. */
function cutBands(fit: WeibullFit, source: LifeSource, count: number): FittedBand[] {
  const { ages, entered, events, lost } = ageFlows(source);
  const hazardAt = cumulativeHazard(fit);
  const bands: FittedBand[] = [];
  let band: FittedBand = { until: 0, observed: 0, expected: 0, byM: 0, byS: 0 };
  let atRisk = 0;
  let before = hazardAt(0);
  let expectedInAll = 0;
  ages.forEach((age, i) => {
    const here = hazardAt(age);
    band.expected += atRisk * (here.value - before.value);
    band.byM += atRisk * (here.byM - before.byM);
    band.byS += atRisk * (here.byS - before.byS);
    expectedInAll += atRisk * (here.value - before.value);
    band.observed += events[i] ?? 0;
    band.until = age;
    before = here;
    atRisk += (entered[i] ?? 0) - (events[i] ?? 0) - (lost[i] ?? 0);
    const full = (fit.events * (bands.length + 1)) / count;
    if (expectedInAll >= full && bands.length < count - 1) {
      bands.push(band);
      band = { until: age, observed: 0, expected: 0, byM: 0, byS: 0 };
    }
  });
  return band.expected > 0 ? [...bands, band] : bands;
}

function cumulativeHazard({ core }: WeibullFit) {
  const { m, s } = core.peak;
  const spread = Math.exp(s);
  return (age: number) => {
    if (age === 0) return { value: 0, byM: 0, byS: 0 };
    const z = (Math.log(age / core.sample.unit) - m) / spread;
    const value = Math.exp(z);
    return { value, byM: -value / spread, byS: -value * z };
  };
}
