import { expect, test } from "vitest";
import { benchmarkForecast } from "@/lib/statistics/demand/benchmark-forecast";
import { croston } from "@/lib/statistics/demand/croston";
import { forecastErrors } from "@/lib/statistics/demand/forecast-errors";
import { intervalScore } from "@/lib/statistics/demand/interval-score";
import { pinballLoss } from "@/lib/statistics/demand/pinball-loss";
import { rankProbabilityScore } from "@/lib/statistics/demand/rank-probability-score";
import { teunterSyntetosBabai } from "@/lib/statistics/demand/teunter-syntetos-babai";
import { normalCdf } from "@/lib/statistics/normal";
import { expectPrinted, referenceRows } from "@/tests/reference/read-reference";
import { randomSource } from "./random-source";

const slow = referenceRows("intermittent_ts1").map((row) => Number(row.demand));

// Croston (1972); Syntetos & Boylan (2005): recomputed with R forecast 8.20 and separate code, no printed table found.
test("F01: three forecasts of a part asked for ten times in 84 months", () => {
  const of = (method: Parameters<typeof croston>[0]["method"]) => {
    const result = croston({ demand: slow, smoothing: { size: 0.1, interval: 0.1 }, method, start: "first-demand" });
    if (result.kind !== "forecast") throw new Error("there was demand");
    return result;
  };
  const plain = of("croston");
  expectPrinted("F01", {
    z: plain.size,
    interval: plain.interval,
    croston: plain.perPeriod,
    croston_forecast_pkg: plain.perPeriod,
    sba: of("syntetos-boylan").perPeriod,
    sbj: of("shale-boylan-johnston").perPeriod,
  });
});

// By hand: demand 0 4 0 0 2: sizes 4, 2 and intervals 2, 3; half of each step.
test("Croston by hand, from each start", () => {
  const input = { demand: [0, 4, 0, 0, 2], smoothing: { size: 0.5, interval: 0.5 }, method: "croston" } as const;
  expect(croston({ ...input, start: "first-demand" })).toEqual({
    kind: "forecast",
    size: 3,
    interval: 2.5,
    perPeriod: 1.2,
  });
  expect(croston({ ...input, start: "mean-interval" })).toMatchObject({ size: 3, interval: 2.75 });
  // From size 2, interval 4: (2, 4) → (3, 3) → (2.5, 3).
  expect(croston({ ...input, start: { size: 2, interval: 4 } })).toMatchObject({ size: 2.5, interval: 3 });
  expect(croston({ ...input, demand: [0, 0], start: "first-demand" })).toEqual({ kind: "no-demand" });
  expect(() => croston({ ...input, demand: [1, -1], start: "first-demand" })).toThrow(/demand\[1\]/);
});

// By hand: demand 0 4 0 2 0, half of each step: chance ½ → ¼ → ⅝ → 5⁄16, size 4 → 3.
test("Teunter, Syntetos & Babai by hand, and falling while nothing is asked for", () => {
  const smoothing = { size: 0.5, chance: 0.5 };
  const input = { demand: [0, 4, 0, 2, 0], smoothing, start: "first-demand" } as const;
  expect(teunterSyntetosBabai(input)).toEqual({ kind: "forecast", size: 3, chance: 5 / 16, perPeriod: 15 / 16 });
  expect(teunterSyntetosBabai({ ...input, demand: [0, 4, 0, 2, 0, 0] })).toMatchObject({ perPeriod: 15 / 32 });
  expect(teunterSyntetosBabai({ ...input, demand: [0, 4], start: { size: 2, chance: 1 } })).toMatchObject({
    size: 3,
    chance: 0.75,
  });
  expect(teunterSyntetosBabai({ ...input, demand: [] })).toEqual({ kind: "no-demand" });
});

// Hyndman & Athanasopoulos (2018), section 3.4: printed table from memory, recomputed with R forecast.
test("F03: errors of four benchmark forecasts of quarterly beer", () => {
  const rows = referenceRows("beer_quarterly_1992_2010");
  const values = (keep: (time: number) => boolean) =>
    rows.filter((row) => keep(Number(row.time))).map((row) => Number(row.megalitres));
  const training = values((time) => time < 2008);
  const actual = values((time) => time >= 2008);
  const results = (["mean", "naive", "seasonal-naive", "drift"] as const).flatMap((method) => {
    const forecast = benchmarkForecast({ training, horizon: actual.length, method, season: 4 });
    const errors = forecastErrors({ actual, forecast, training, season: 4 });
    const name = method === "seasonal-naive" ? "snaive" : method;
    return [
      [`${name}_rmse`, errors.rootMeanSquare],
      [`${name}_mae`, errors.meanAbsolute],
      [`${name}_mape`, errors.percentage.kind === "value" ? errors.percentage.value : -1],
      [`${name}_mase`, errors.scaled.kind === "value" ? errors.scaled.value : -1],
    ] as const;
  });
  expectPrinted("F03", Object.fromEntries(results));
});

test("errors that do not exist are named", () => {
  const errors = forecastErrors({ actual: [0, 2], forecast: [1, 1], training: [3, 3, 3], season: 1 });
  expect(errors).toMatchObject({ percentage: { kind: "undefined-at-zero" }, scaled: { kind: "constant-training" } });
  expect(() => forecastErrors({ actual: [1], forecast: [], training: [1, 2], season: 1 })).toThrow(
    /one value per actual/,
  );
  expect(() => benchmarkForecast({ training: [1, 2], horizon: 2, method: "seasonal-naive", season: 4 })).toThrow(
    /at least 4/,
  );
});

// Gneiting & Raftery (2007); values read in the stored tests of a package, the normal at 0 recomputed.
test("F05: scores of normal, negative binomial and uniform forecasts", () => {
  const standard = { kind: "normal", mean: 0, standardDeviation: 1 } as const;
  const counts = { kind: "negative-binomial", size: 200.1, mean: (200.1 * 0.18) / 0.82 } as const;
  expectPrinted("F05", {
    norm_m3: rankProbabilityScore(standard, -3),
    norm_0: rankProbabilityScore(standard, 0),
    nbinom_44: rankProbabilityScore(counts, 44),
    "unif_0.3": rankProbabilityScore({ kind: "uniform", from: 0, to: 1 }, 0.3),
  });
});

/** ∫ (F(x) − 1{x >= outcome})² dx by the trapezium rule, split at the outcome: the definition of the score. */
function byDefinition(cdf: (x: number) => number, outcome: number, from: number, to: number): number {
  const piece = (a: number, b: number, above: number) => {
    const steps = 20_000;
    const width = (b - a) / steps;
    let sum = 0;
    for (let i = 0; i <= steps; i++) sum += (cdf(a + i * width) - above) ** 2 * (i === 0 || i === steps ? 0.5 : 1);
    return sum * width;
  };
  return piece(from, outcome, 0) + piece(outcome, to, 1);
}

test("scores equal the integral that defines them", () => {
  const cdf = (x: number) => normalCdf((x - 5) / 2);
  const score = rankProbabilityScore({ kind: "normal", mean: 5, standardDeviation: 2 }, 8.3);
  expect(score).toBeCloseTo(byDefinition(cdf, 8.3, -15, 25), 6);
  const flat = (x: number) => Math.min(1, Math.max(0, (x - 2) / 4));
  expect(rankProbabilityScore({ kind: "uniform", from: 2, to: 6 }, 9)).toBeCloseTo(byDefinition(flat, 9, 0, 12), 6);
});

// By definition: mean distance to the outcome less half the mean distance of all pairs; and one draw is absolute error.
test("the score of a sample is that of its pairs, and of one draw the absolute error", () => {
  const random = randomSource(11);
  const draws = Array.from({ length: 60 }, () => random.poisson(4));
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const pairs = mean(draws.flatMap((a) => draws.map((b) => Math.abs(a - b))));
  const expected = mean(draws.map((draw) => Math.abs(draw - 6))) - pairs / 2;
  expect(rankProbabilityScore({ kind: "sample", draws }, 6)).toBeCloseTo(expected, 12);
  expect(rankProbabilityScore({ kind: "sample", draws: [3] }, 7.5)).toBe(4.5);
});

// By definition: a Poisson score is that of a huge sample; a certain zero scores the outcome itself.
test("Poisson scores agree with the negative binomial of huge size", () => {
  const poisson = rankProbabilityScore({ kind: "poisson", mean: 3.3 }, 5);
  expect(rankProbabilityScore({ kind: "negative-binomial", size: 1e9, mean: 3.3 }, 5)).toBeCloseTo(poisson, 7);
  expect(rankProbabilityScore({ kind: "poisson", mean: 0 }, 4)).toBe(4);
  expect(() => rankProbabilityScore({ kind: "poisson", mean: 2 }, 1.5)).toThrow(/outcome/);
  expect(() => rankProbabilityScore({ kind: "sample", draws: [] }, 1)).toThrow(/draws/);
});

// Winkler (1972); fpp3 section 5.9: definitions read, arithmetic by hand.
test("F07: interval score and pinball loss", () => {
  const winkler = (outcome: number) => intervalScore({ low: 2, high: 10, level: 0.8, outcome });
  const pinball = (outcome: number, scale: "plain" | "doubled") =>
    pinballLoss({ quantile: 8, probability: 0.9, outcome, scale });
  expectPrinted("F07", {
    winkler_inside: winkler(5),
    winkler_above: winkler(13),
    winkler_below: winkler(1),
    pinball_under: pinball(5, "plain"),
    pinball_over: pinball(12, "plain"),
    fpp3_doubled_over: pinball(12, "doubled"),
  });
});
