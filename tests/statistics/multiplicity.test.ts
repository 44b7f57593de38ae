import { expect, test } from "vitest";
import { type AdjustmentMethod, adjustedPValues } from "@/lib/statistics/multiplicity/adjusted-p-values";
import { gammaPoissonFit } from "@/lib/statistics/multiplicity/gamma-poisson-fit";
import { jamesStein } from "@/lib/statistics/multiplicity/james-stein";
import { shrunkenRate } from "@/lib/statistics/multiplicity/shrunken-rate";
import { expectClose, expectPrinted, referenceRows } from "@/tests/reference/read-reference";
import { namedValues } from "@/tests/reference/read-table";

// Benjamini & Hochberg (1995), JRSS B 57, section 4.1: counts from memory, adjusted values recomputed.
test("H01: four procedures on 15 p-values", () => {
  const p = [
    0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528, 0.759, 1,
  ];
  const rejected = (method: AdjustmentMethod) => adjustedPValues(p, method).filter((value) => value <= 0.05).length;
  const q = adjustedPValues(p, "benjamini-hochberg");
  expectPrinted("H01", {
    n_bh: rejected("benjamini-hochberg"),
    n_bonf: rejected("bonferroni"),
    n_hochberg: rejected("hochberg"),
    n_by: rejected("benjamini-yekutieli"),
    q1: q[0] ?? -1,
    q4: q[3] ?? -1,
    q6: q[5] ?? -1,
    q9: q[8] ?? -1,
  });
});

// McDonald, Handbook of Biological Statistics: p-values from memory, adjusted values recomputed. At 0.25 the sixth
// value ties with its threshold exactly, so the count there is not tested; Bonferroni is counted at 0.05.
test("H02: 25 dietary variables at a false discovery rate of a quarter", () => {
  const p = [
    0.001, 0.008, 0.039, 0.041, 0.042, 0.06, 0.074, 0.205, 0.212, 0.216, 0.222, 0.251, 0.269, 0.275, 0.34, 0.341, 0.384,
    0.569, 0.594, 0.696, 0.762, 0.94, 0.942, 0.975, 0.986,
  ];
  const q = adjustedPValues(p, "benjamini-hochberg");
  expectPrinted("H02", {
    q_total_calories: q[0] ?? -1,
    q_olive_oil: q[1] ?? -1,
    q_proteins: q[4] ?? -1,
    n_bonf: adjustedPValues(p, "bonferroni").filter((value) => value <= 0.05).length,
  });
});

// R 4.2.2 p.adjust, tests/reference/distributions.R: unsorted, with a tie.
test.each([
  ["BH", "benjamini-hochberg"],
  ["BY", "benjamini-yekutieli"],
  ["bonferroni", "bonferroni"],
  ["holm", "holm"],
  ["hochberg", "hochberg"],
] as const)("%s agrees with R in the order given", (name, method) => {
  const rows = namedValues("distributions-from-r.csv", `p.adjust.${name}`);
  const adjusted = adjustedPValues(
    rows.map((row) => row.b),
    method,
  );
  rows.forEach(({ value }, i) => {
    expectClose(adjusted[i] ?? -1, value, 1e-14);
  });
});

test("no tests need no adjustment, and a p-value above 1 throws", () => {
  expect(adjustedPValues([], "holm")).toEqual([]);
  expect(() => adjustedPValues([0.2, 1.2], "holm")).toThrow("pValues[1] must lie in 0..1; it is 1.2");
});

const pumps = referenceRows("pump_failures").map((row) => ({
  events: Number(row.failures),
  exposure: Number(row.kilo_hours),
}));

// Gaver & O'Muircheartaigh (1987) data; shape and rate read in stored logs of a Monte Carlo fit, means recomputed in R.
test("H03: ten pumps drawn towards each other", () => {
  const prior = fitted(pumps);
  const at = (pump: number) => {
    const { events, exposure } = pumps[pump - 1] ?? { events: 0, exposure: 1 };
    return shrunkenRate({ events, exposure, prior, confidence: 0.95 }).point;
  };
  expectPrinted("H03", { alpha: prior.shape, beta: prior.rate, theta1: at(1), theta5: at(5), theta10: at(10) });
});

// By definition: rates do not depend on the unit of exposure, so hours for thousands of hours only scale the rate.
test("the fit does not depend on the unit of exposure", () => {
  const thousand = fitted(pumps);
  const single = fitted(pumps.map(({ events, exposure }) => ({ events, exposure: 1000 * exposure })));
  expectClose(single.shape, thousand.shape, 1e-9);
  expectClose(single.rate, 1000 * thousand.rate, 1e-9);
});

// R 4.2.2 optim on the marginal likelihood, tests/reference/distributions.R; with groups that have no events.
test("the fitted gamma agrees with direct maximisation in R", () => {
  const events = [0, 3, 1, 9, 4, 0, 2, 30, 7, 1];
  const exposure = [2, 5, 1.5, 6, 7, 0.4, 3, 11, 9, 2.2];
  const { shape, rate } = fitted(events.map((count, i) => ({ events: count, exposure: exposure[i] ?? 1 })));
  expectClose(shape, namedValues("distributions-from-r.csv", "gammapoisson.shape")[0]?.value ?? -1, 1e-6);
  expectClose(shape / rate, namedValues("distributions-from-r.csv", "gammapoisson.mean")[0]?.value ?? -1, 1e-6);
});

function fitted(groups: Parameters<typeof gammaPoissonFit>[0]) {
  const fit = gammaPoissonFit(groups);
  if (fit.kind !== "fitted") throw new Error(`expected a fit, got ${fit.kind}`);
  return fit;
}

test("groups that differ no more than chance have no spread to fit", () => {
  const even = [4, 5, 6, 5].map((events) => ({ events, exposure: 10 }));
  expect(gammaPoissonFit(even)).toEqual({ kind: "no-excess-spread", commonRate: 0.5 });
  expect(
    gammaPoissonFit([
      { events: 0, exposure: 1 },
      { events: 0, exposure: 2 },
    ]),
  ).toEqual({ kind: "no-events" });
  expect(() => gammaPoissonFit([{ events: 1, exposure: 1 }])).toThrow(/two groups/);
});

// Efron & Morris (1975), JASA 70: factor read, averages from memory, squared errors recomputed.
test("H05: eighteen batting averages drawn towards their mean", () => {
  const rows = referenceRows("baseball_1970");
  const values = rows.map((row) => Number(row.r) / 45);
  const average = values.reduce((sum, value) => sum + value, 0) / values.length;
  const result = jamesStein({ values, variance: (average * (1 - average)) / 45, positivePart: false });
  if (result.kind !== "shrunken") throw new Error("the averages differ");
  const season = rows.map((row) => Number(row.p));
  const squares = (guess: readonly number[]) =>
    guess.reduce((sum, value, i) => sum + (value - (season[i] ?? 0)) ** 2, 0);
  expectPrinted("H05", {
    mean: result.average,
    c: result.factor,
    batter_1: result.values[0] ?? -1,
    batter_18: result.values[17] ?? -1,
    sse_raw: squares(values),
    sse_js: squares(result.values),
  });
});

test("the positive part never shrinks past the average, and equal values have nothing to shrink", () => {
  const values = [1, 1.1, 0.9, 1.05];
  const plain = jamesStein({ values, variance: 1, positivePart: false });
  const positive = jamesStein({ values, variance: 1, positivePart: true });
  expect(plain).toMatchObject({ kind: "shrunken", factor: expect.closeTo(1 - 1 / 0.021875, 9) }); // by hand
  expect(positive).toMatchObject({ kind: "shrunken", factor: 0 });
  expect(jamesStein({ values: [2, 2, 2, 2], variance: 1, positivePart: true })).toEqual({
    kind: "all-equal",
    average: 2,
  });
});
