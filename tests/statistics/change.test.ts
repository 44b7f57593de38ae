import { expect, test } from "vitest";
import { changePoint } from "@/lib/statistics/change/change-point";
import { cusumDesign } from "@/lib/statistics/change/cusum-design";
import { cusumRunLength } from "@/lib/statistics/change/cusum-run-length";
import { multinomialMaximumAtLeast } from "@/lib/statistics/change/multinomial-maximum";
import { cusumReference, poissonCusum } from "@/lib/statistics/change/poisson-cusum";
import { expectPrinted, referenceRows } from "@/tests/reference/read-reference";
import { randomSource } from "./random-source";

// Lucas (1985), Technometrics 27, tables 2-5: printed values read in a stored page that quotes them.
test("D01: mean run lengths of Poisson CUSUMs, with and without head start", () => {
  const chart = { mean: 0.25, reference: 0.25, threshold: 10, signalAt: "reach" } as const;
  const upper = cusumRunLength({ ...chart, start: 0, side: "upper" });
  expectPrinted("D01", {
    upper,
    upper_headstart: cusumRunLength({ ...chart, start: 5, side: "upper" }),
    lower: cusumRunLength({ ...chart, start: 0, side: "lower" }),
    lower_headstart: cusumRunLength({ ...chart, start: 5, side: "lower" }),
    upper_own_markov: upper,
  });
});

// By simulation: the chart itself, run until it signals. The standard error of 4,000 runs is about 1.6 % of the mean.
test.each([
  { mean: 1.2, reference: 1.5, threshold: 4, start: 0, side: "upper" },
  { mean: 3, reference: 2.4, threshold: 7, start: 3.5, side: "upper" },
  { mean: 2, reference: 2.5, threshold: 5, start: 0, side: "lower" },
] as const)("the chain agrees with running the chart: %o", ({ mean, reference, threshold, start, side }) => {
  const random = randomSource(20_240_117);
  let periods = 0;
  const runs = 4000;
  for (let run = 0; run < runs; run++) {
    let sum: number = start;
    do {
      const step = random.poisson(mean) - reference;
      sum = Math.max(0, sum + (side === "upper" ? step : -step));
      periods += 1;
    } while (sum < threshold - 1e-9);
  }
  const exact = cusumRunLength({ mean, reference, threshold, start, side, signalAt: "reach" });
  expect(Math.abs(periods / runs / exact - 1)).toBeLessThan(0.06);
});

// By hand: reference 1, threshold 1, signal on reaching: a count of 2 or more signals at once; otherwise back at 0.
test("a chart with one state waits a geometric time", () => {
  const input = { mean: 0.5, reference: 1, threshold: 1, start: 0, side: "upper" } as const;
  const chance = 1 - Math.exp(-0.5) * 1.5;
  expect(cusumRunLength({ ...input, signalAt: "reach" })).toBeCloseTo(1 / chance, 10);
  expect(cusumRunLength({ ...input, signalAt: "exceed" })).toBeGreaterThan(1 / chance);
});

test("a reference off every lattice throws, and so does a start beyond the threshold", () => {
  const input = { mean: 1, threshold: 5, start: 0, side: "upper", signalAt: "reach" } as const;
  expect(() => cusumRunLength({ ...input, reference: Math.SQRT2 })).toThrow(/reference must be a multiple/);
  expect(() => cusumRunLength({ ...input, reference: 1.5, start: 5 })).toThrow(/start must lie below/);
});

// By definition: one step less of threshold would fall short of the wanted run.
test.each([0.3, 2, 11])("a design for mean %d meets its wanted run with the smallest threshold", (mean) => {
  const design = cusumDesign({ mean, ratio: 2, inControlRun: 260, referenceSteps: 10 });
  expect(design.inControlRun).toBeGreaterThanOrEqual(260);
  const smaller = { ...design, threshold: design.threshold - 0.1 };
  const common = { mean, start: 0, side: "upper", signalAt: "reach" } as const;
  expect(cusumRunLength({ ...common, reference: design.reference, threshold: smaller.threshold })).toBeLessThan(260);
  expect(design.detectionRun).toBeLessThan(design.inControlRun / 4);
});

// By hand: 0.5, 0, 1.5, 3, 2.5 from counts 2 0 3 3 1 and reference 1.5; it signals in period 3 and began in period 2.
test("the chart adds what exceeds the reference and says where the run began", () => {
  const counts = [2, 0, 3, 3, 1];
  const points = poissonCusum({ counts, references: counts.map(() => 1.5), threshold: 3, start: 0 });
  expect(points).toEqual([
    { kind: "running", sum: 0.5, signals: false, onset: 0 },
    { kind: "at-zero", sum: 0, signals: false },
    { kind: "running", sum: 1.5, signals: false, onset: 2 },
    { kind: "running", sum: 3, signals: true, onset: 2 },
    { kind: "running", sum: 2.5, signals: false, onset: 2 },
  ]);
  expect(() => poissonCusum({ counts, references: [1], threshold: 3, start: 0 })).toThrow(/one value per count/);
});

// By definition: at the reference k the likelihood ratio of a count k between the two means is 1.
test("the reference is where both means explain a count equally well", () => {
  const k = cusumReference({ expected: 4, ratio: 3 });
  expect(k * Math.log(3) - (12 - 4)).toBeCloseTo(0, 12);
});

// Jarrett (1979) data; recomputed in R.
test("D03: the coal-mining disasters became rarer after 1891", () => {
  const rows = referenceRows("coal_disasters");
  const periods = rows.map((row) => ({ events: Number(row.disasters), exposure: 1 }));
  const result = changePoint({ periods, confidence: 0.95 });
  if (result.kind !== "change" || result.beforeOverAfter.kind !== "ratio") throw new Error("the rates differ");
  expectPrinted("D03", {
    total: periods.reduce((sum, { events }) => sum + events, 0),
    last_year_before: Number(rows[result.lastBefore]?.year),
    rate_before: result.rateBefore,
    rate_after: result.rateAfter,
    lr: result.likelihoodRatio,
    ratio_lo: result.beforeOverAfter.low,
    ratio_hi: result.beforeOverAfter.high,
  });
});

// By definition: every split tried by separate code, with unequal exposures.
test("the split found is the likeliest of all", () => {
  const random = randomSource(7);
  const periods = Array.from({ length: 30 }, (_, i) => ({
    events: random.poisson(i < 19 ? 2 : 5),
    exposure: 1 + (i % 3),
  }));
  const log = (part: typeof periods) => {
    const events = part.reduce((sum, period) => sum + period.events, 0);
    const exposure = part.reduce((sum, period) => sum + period.exposure, 0);
    return part.reduce((sum, period) => {
      const mean = (events / exposure) * period.exposure;
      return sum + (period.events === 0 ? 0 : period.events * Math.log(mean)) - mean;
    }, 0);
  };
  const gains = periods.slice(1).map((_, i) => log(periods.slice(0, i + 1)) + log(periods.slice(i + 1)) - log(periods));
  const result = changePoint({ periods, confidence: 0.95 });
  expect(result).toMatchObject({ lastBefore: gains.indexOf(Math.max(...gains)) });
  if (result.kind === "change") expect(result.likelihoodRatio).toBeCloseTo(2 * Math.max(...gains), 9);
  expect(
    changePoint({
      periods: [
        { events: 0, exposure: 1 },
        { events: 0, exposure: 1 },
      ],
      confidence: 0.9,
    }),
  ).toEqual({
    kind: "no-events",
  });
});

// Recomputed in R exactly and by simulation; no print found. Twelve equal months.
test("D04: how often the fullest of twelve months holds so many", () => {
  const weights = new Array<number>(12).fill(1);
  expectPrinted("D04", {
    p_max6_of_20: multinomialMaximumAtLeast({ events: 20, weights, atLeast: 6 }),
    p_max5_of_20: multinomialMaximumAtLeast({ events: 20, weights, atLeast: 5 }),
    p_max4_of_8: multinomialMaximumAtLeast({ events: 8, weights, atLeast: 4 }),
  });
});

// By definition: all 3⁶ arrangements of six events in cells with chances 1/2, 1/3, 1/6, listed.
test.each([1, 2, 3, 4, 5, 6, 7])(
  "the chance of %i in one of three uneven cells is that of the arrangements",
  (atLeast) => {
    const chances = [1 / 2, 1 / 3, 1 / 6];
    let sum = 0;
    for (let code = 0; code < 3 ** 6; code++) {
      const filled = [0, 0, 0];
      let chance = 1;
      for (let event = 0, rest = code; event < 6; event++, rest = Math.floor(rest / 3)) {
        filled[rest % 3] = (filled[rest % 3] ?? 0) + 1;
        chance *= chances[rest % 3] ?? 0;
      }
      if (Math.max(...filled) >= atLeast) sum += chance;
    }
    expect(multinomialMaximumAtLeast({ events: 6, weights: [3, 2, 1], atLeast })).toBeCloseTo(sum, 12);
  },
);
