import { describe, expect, test } from "vitest";
import { changePoint } from "@/lib/statistics/change/change-point";
import { poissonMidP } from "@/lib/statistics/intervals/poisson-mid-p";
import { poissonRate } from "@/lib/statistics/intervals/poisson-rate";
import { rateRatio } from "@/lib/statistics/intervals/rate-ratio";
import { robustRate, unitSums } from "@/lib/statistics/intervals/robust-rate";
import { andersonDarling } from "@/lib/statistics/life/anderson-darling";
import { failureAge } from "@/lib/statistics/life/failure-age";
import { failureProbability } from "@/lib/statistics/life/failure-probability";
import { fitExponential } from "@/lib/statistics/life/fit-exponential";
import { fitLognormal } from "@/lib/statistics/life/fit-lognormal";
import { fitWeibull } from "@/lib/statistics/life/fit-weibull";
import type { FittedLife } from "@/lib/statistics/life/fitted-life";
import type { InspectionRow } from "@/lib/statistics/life/inspection-rows";
import type { FitSource } from "@/lib/statistics/life/life-sample";
import { gammaPoissonFit } from "@/lib/statistics/multiplicity/gamma-poisson-fit";
import { compareRecurrence } from "@/lib/statistics/recurrence/compare-recurrence";
import { fitPowerLaw } from "@/lib/statistics/recurrence/fit-power-law";
import { meanCumulativeFunction } from "@/lib/statistics/recurrence/mean-cumulative-function";
import { trendTests } from "@/lib/statistics/recurrence/trend-tests";
import type { UnitHistory } from "@/lib/statistics/recurrence/unit-history";
import { ageBands } from "@/lib/statistics/survival/age-bands";
import { bandHazards } from "@/lib/statistics/survival/band-hazards";
import { compareCurves } from "@/lib/statistics/survival/compare-curves";
import { kaplanMeier } from "@/lib/statistics/survival/kaplan-meier";
import { lifeTable } from "@/lib/statistics/survival/life-table";
import { nelsonAalen } from "@/lib/statistics/survival/nelson-aalen";
import { survivalQuantile } from "@/lib/statistics/survival/survival-quantile";
import { firstDifference } from "../failures/estimates-of";
import { heatExchanger, turbineWheels } from "./life/reference-inspections";
import { brakingGrids, valveSeats } from "./recurrence/reference-histories";
import { ballBearings, bearingCages, generatorFans, leukemia, macs, rescaled, rossi } from "./survival/reference-lives";

// By definition: in another unit of time every age, scale and rate follows the unit, and every shape, probability and test
// stays as it is. From a millionth of the unit to a million of it.

const factors = [1e-6, 1 / 24, 1000, 1e6];
const confidence = 0.95;

/** Fails unless the results agree once those in time are put back into the first unit. */
function expectSame(found: unknown, expected: unknown, relative: number): void {
  expect(firstDifference(found, expected, relative)).toBeUndefined();
}

const inspected = (rows: readonly InspectionRow[], factor: number): InspectionRow[] =>
  rows.map((row) => ({ ...row, entry: row.entry * factor, after: row.after * factor, by: row.by * factor }));

const samples: readonly (readonly [string, (factor: number) => FitSource])[] = [
  ["bearing cages", (factor) => rescaled(bearingCages(), factor)],
  ["generator fans", (factor) => rescaled(generatorFans(), factor)],
  ["late-entry cohort", (factor) => rescaled(macs(), factor)],
  ["late-entry releases", (factor) => rescaled(rossi(), factor)],
  ["heat exchanger tubes", (factor) => inspected(heatExchanger(), factor)],
  ["turbine wheels", (factor) => inspected(turbineWheels(), factor)],
];

describe.each(factors)("time in units of %d", (factor) => {
  describe.each(samples)("%s", (_, rows) => {
    test.each([
      ["weibull", fitWeibull],
      ["lognormal", fitLognormal],
      ["exponential", fitExponential],
    ] as const)("%s", (_family, estimate) => {
      const [plain, scaled] = [1, factor].map((unit) => {
        const found: FittedLife | { readonly kind: "refused" } = estimate(rows(unit), { confidence, minimumEvents: 1 });
        if (found.kind === "refused") throw new Error("no fit");
        return toldIn(unit, found);
      });
      expectSame(scaled, plain, 1e-9);
    });
  });

  test.each([
    ["remission", leukemia("6-MP")],
    ["late-entry cohort", macs()],
  ])("curves of the %s data", (_, rows) => {
    const [plain, scaled] = [1, factor].map((unit) => curvesIn(unit, rescaled(rows, unit)));
    expectSame(scaled, plain, 1e-12);
  });

  test("two curves compared", () => {
    const [plain, scaled] = [1, factor].map((unit) =>
      (["log-rank", "gehan", "peto"] as const).map((weights) =>
        compareCurves(rescaled(leukemia("6-MP"), unit), rescaled(leukemia("control"), unit), { weights }),
      ),
    );
    expectSame(scaled, plain, 1e-12);
  });

  test("recurrence: means, comparison, power law and trend", () => {
    const [plain, scaled] = [1, factor].map((unit) => recurrenceIn(unit));
    expectSame(scaled, plain, 1e-11);
  });

  test("rates, ratios, the spread between groups and the point of change", () => {
    const [plain, scaled] = [1, factor].map((unit) => ratesIn(unit));
    expectSame(scaled, plain, 1e-9);
  });

  test("the Anderson–Darling statistic", () => {
    const of = (unit: number) =>
      andersonDarling({ ages: ballBearings(unit).map(({ exit }) => exit), shape: 2.1, scale: 82 * unit });
    expectSame(of(factor), of(1), 1e-12);
  });
});

/** Everything told of a fit, ages in the first unit. */
function toldIn(unit: number, fit: FittedLife): unknown {
  const age = failureAge(fit, { fraction: 0.1, confidence, interval: "profile" });
  const place = fit.core.peak.m + Math.log(fit.core.sample.unit / unit);
  const back = (bound: number | "unbounded") => (bound === "unbounded" ? bound : bound / unit);
  const scale = fit.family === "weibull" ? fit.scale : fit.family === "lognormal" ? fit.median : fit.mean;
  return {
    place: Math.exp(place),
    spread: Math.exp(fit.core.peak.s),
    covariance: fit.core.covariance,
    // A density per unit of time: each exact failure adds the logarithm of the unit.
    logLikelihood: fit.logLikelihood + fit.core.sample.exact.count * Math.log(unit),
    tenth: { age: age.age / unit, low: back(age.low), high: back(age.high) },
    scale: { low: back(scale.profile.low), high: back(scale.profile.high), error: scale.logStandardError },
    shape: fit.family === "weibull" ? fit.shape : fit.family,
    chance: (["profile", "delta"] as const).map((interval) =>
      failureProbability(fit, { age: 0.7 * Math.exp(place) * unit, confidence, interval }),
    ),
  };
}

function curvesIn(unit: number, rows: Parameters<typeof kaplanMeier>[0] & Parameters<typeof ageBands>[0]): unknown {
  const curve = kaplanMeier(rows, { confidence, interval: "log-log" });
  const hazard = nelsonAalen(rows, { confidence, interval: "log" });
  const bands = ageBands(
    rows,
    [0, 2, 5, 9, 40].map((age) => age * unit),
  );
  if (curve.kind !== "curve" || hazard.kind !== "curve") throw new Error("no curve");
  const median = survivalQuantile(curve, 0.5);
  const back = (age: number | "not-reached") => (age === "not-reached" ? age : age / unit);
  return {
    survival: curve.steps.map(({ age, ...step }) => ({ ...step, age: age / unit })),
    hazard: hazard.steps.map(({ age, ...step }) => ({ ...step, age: age / unit })),
    median: median.kind === "reached" ? [median.age, median.low, median.high].map(back) : median,
    table: lifeTable(bands).rows.map(({ survivalAtEnd, standardError, hazard: rate }) => [
      survivalAtEnd,
      standardError,
      rate * unit,
    ]),
    bands: bandHazards(bands, { confidence }).map((band) =>
      band.kind === "hazard" ? [band.rate * unit, band.low * unit, band.high * unit] : band.kind,
    ),
  };
}

function recurrenceIn(unit: number): unknown {
  const inUnit = (histories: readonly UnitHistory[]) =>
    histories.map(({ entry, exit, count, events }) => ({
      entry: entry * unit,
      exit: exit * unit,
      count,
      events: events.map(({ age, size }) => ({ age: age * unit, size })),
    }));
  const curve = meanCumulativeFunction(inUnit(valveSeats()), { confidence, variance: "robust", interval: "log" });
  const records = inUnit(valveSeats()).map(({ exit, events }) => ({
    end: exit,
    repairs: events.map(({ age }) => age),
    stoppedBy: "time" as const,
  }));
  const power = fitPowerLaw(records, { confidence, minimumEvents: 1 });
  if (curve.kind !== "curve" || power.kind !== "fitted") throw new Error("no recurrence");
  return {
    steps: curve.steps.map(({ age, ...step }) => ({ ...step, age: age / unit })),
    compared: compareRecurrence(inUnit(brakingGrids(1)), inUnit(brakingGrids(2))),
    power: { ...power, scale: power.scale / unit },
    trend: trendTests(records),
  };
}

function ratesIn(unit: number): unknown {
  const rows = [5, 1, 5, 14, 3, 19, 1, 1, 4, 22].map((events, i) => ({ events, exposure: (94.3 / (i + 1)) * unit }));
  const [first, second] = [rows[0], rows[1]];
  if (first === undefined || second === undefined) throw new Error("no rows");
  const spread = gammaPoissonFit(rows);
  const change = changePoint({ periods: rows, confidence });
  const robust = robustRate({ ...unitSums(rows), confidence });
  if (spread.kind !== "fitted" || change.kind !== "change" || robust.kind !== "interval") throw new Error("no answer");
  const perUnit = ({ point, low, high }: { point: number; low: number; high: number }) => [
    point * unit,
    low * unit,
    high * unit,
  ];
  return {
    exact: perUnit(poissonRate({ ...first, confidence })),
    midP: perUnit(poissonMidP({ ...first, confidence })),
    robust: [...perUnit(robust), robust.dispersion],
    ratio: rateRatio({ first, second, confidence, twoSided: "central" }),
    spread: [spread.shape, spread.rate / unit],
    change: [change.lastBefore, change.likelihoodRatio, change.rateBefore * unit, change.rateAfter * unit],
  };
}
