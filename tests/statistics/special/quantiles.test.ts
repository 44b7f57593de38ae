import { expect, test } from "vitest";
import { betaQuantile, betaQuantileSplit, betaUpperQuantile } from "@/lib/statistics/beta-quantile";
import { chiSquareQuantile, chiSquareUpperQuantile, chiSquareUpperTail } from "@/lib/statistics/chi-square-quantile";
import { gammaQuantile, gammaUpperQuantile } from "@/lib/statistics/gamma-quantile";
import { incompleteBetaAt } from "@/lib/statistics/incomplete-beta";
import { normalQuantile } from "@/lib/statistics/normal";
import { studentCdf, studentQuantile } from "@/lib/statistics/student-t";
import { expectClose } from "@/tests/reference/read-reference";
import { namedValues, referenceTable } from "@/tests/reference/read-table";

const quantiles: Readonly<Record<string, (p: number, a: number, b: number) => number>> = {
  gamma: (p, shape, rate) => gammaQuantile(p, shape) / rate,
  beta: betaQuantile,
  chisq: chiSquareQuantile,
  norm: (p, mean, sd) => mean + sd * normalQuantile(p),
};

// tests/reference/quantiles.tsv: R 4.2.2 values refined by Newton steps in 40-digit arithmetic (mpmath).
test.each(Object.entries(quantiles))("every %s quantile of the table is met to 1e-12", (distribution, quantile) => {
  const rows = referenceTable("quantiles.tsv").filter((row) => row.distribution === distribution);
  expect(rows.length).toBeGreaterThanOrEqual(14);
  for (const row of rows) {
    const got = quantile(Number(row.probability), Number(row.parameter_1), Number(row.parameter_2));
    expectClose(got, Number(row.quantile_25_digits), 1e-12);
  }
});

// tests/reference/tails.tsv: mpmath, 45 digits; shapes 1 to a million, tails down to 1e-12.
test.each([
  ["gamma.quantile.lower", gammaQuantile],
  ["gamma.quantile.upper", gammaUpperQuantile],
] as const)("%s is met to 1e-12 for up to a million events", (name, quantile) => {
  for (const { a, b, value } of namedValues("tails.tsv", name)) expectClose(quantile(a, b), value, 1e-12);
});

// tests/reference/tails.tsv: mpmath, 45 digits; up to a million events among two or ten million.
test.each([
  ["beta.quantile.lower", betaQuantile],
  ["beta.quantile.upper", betaUpperQuantile],
] as const)("%s is met to 1e-12 for up to a million events", (name, quantile) => {
  for (const { a, b, c, value } of namedValues("tails.tsv", name)) expectClose(quantile(a, b, c), value, 1e-12);
});

// R 4.2.2, tests/reference/distributions.R; R's own t quantiles carry about eleven digits.
test("Student's distribution agrees with R", () => {
  for (const { a, b, value } of namedValues("distributions-from-r.csv", "qt")) {
    expectClose(studentQuantile(a, b), value, 1e-10);
  }
  for (const { a, b, value } of namedValues("distributions-from-r.csv", "pt"))
    expectClose(studentCdf(a, b), value, 1e-12);
});

// By definition: with one degree of freedom Student's distribution is Cauchy's, with quantile tan(π (p − ½)).
test.each([1e-9, 0.01, 0.3, 0.77])("Student's quantile with one degree of freedom at %d is Cauchy's", (p) => {
  expectClose(studentQuantile(p, 1), -1 / Math.tan(Math.PI * p), 1e-12);
});

// By definition: the upper quantile mirrors the lower one.
test("upper quantiles equal lower ones at the complement", () => {
  expectClose(chiSquareUpperQuantile(0.05, 3), chiSquareQuantile(0.95, 3), 1e-13);
  expectClose(betaUpperQuantile(0.05, 3, 9), betaQuantile(0.95, 3, 9), 1e-13);
  expectClose(gammaUpperQuantile(0.75, 4), gammaQuantile(0.25, 4), 1e-13);
});

// By definition: with two degrees of freedom the upper tail is exp(−x / 2).
test.each([0.1, 3, 50, 700])("the chi-square tail beyond %d with two degrees of freedom is exponential", (x) => {
  expectClose(chiSquareUpperTail(x, 2), Math.exp(-x / 2), 1e-13);
  expectClose(chiSquareUpperQuantile(Math.exp(-x / 2), 2), x, 1e-12);
});

test("a tiny shape gives 0 only where the true quantile is below the smallest double", () => {
  expect(gammaQuantile(1e-12, 1e-3)).toBe(0);
  expect(gammaQuantile(0.3, 1e-3)).toBe(0);
  expect(gammaQuantile(0.9, 1e-3)).toBeGreaterThan(0);
});

test.each([0, 1, -0.1, 1.5, Number.NaN])("probability %d has no quantile and throws", (probability) => {
  expect(() => gammaQuantile(probability, 2)).toThrow(RangeError);
  expect(() => betaQuantile(probability, 2, 2)).toThrow(/probability/);
  expect(() => studentQuantile(probability, 2)).toThrow(/probability/);
  expect(() => normalQuantile(probability)).toThrow(/probability/);
});

// By definition: the tail at the quantile is the probability, for parameters from 0.01 to a million on either side.
// A tail moves by at most its hazard times the change of x, hence the slack where the parameters are large.
const parameters = [0.01, 0.5, 1, 3, 29.5, 1000, 500_001, 1_000_000];
test.each(parameters.flatMap((a) => parameters.map((b) => [a, b] as const)))(
  "the tail at a beta quantile of %d, %d is its probability",
  (a, b) => {
    for (const probability of [1e-12, 1e-4, 0.025, 0.3]) {
      const lower = betaQuantileSplit(probability, a, b);
      if (lower.x > 1e-300) expectClose(incompleteBetaAt(a, b, lower).lower, probability, 2e-11);
      const upper = betaQuantileSplit(1 - probability, a, b);
      if (upper.y > 1e-300) expectClose(incompleteBetaAt(a, b, upper).upper, 1 - (1 - probability), 2e-11);
    }
  },
);
