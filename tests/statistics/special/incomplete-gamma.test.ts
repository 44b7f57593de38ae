import { expect, test } from "vitest";
import { incompleteGamma, poissonWeight } from "@/lib/statistics/incomplete-gamma";
import { deviance } from "@/lib/statistics/special/deviance";
import { UNIFORM_GAMMA_COEFFICIENTS } from "@/lib/statistics/special/uniform-gamma-coefficients";
import { expectClose } from "@/tests/reference/read-reference";
import { namedValues } from "@/tests/reference/read-table";

// tests/reference/tails.tsv: mpmath, 45 digits; shapes 0.001 to a million, seven standard deviations to each side.
test.each(["lower", "upper"] as const)("the %s tail is right to 1e-12 wherever it lies", (side) => {
  for (const { a, b, value } of namedValues("tails.tsv", `gamma.${side}`))
    expectClose(incompleteGamma(a, b)[side], value, 1e-12);
});

// By definition: with shape 1 the upper tail is exp(−x).
test.each([1e-12, 0.3, 0.99, 1.01, 2.5, 60, 700])("with shape 1 the tail beyond %d is exponential", (x) => {
  expectClose(incompleteGamma(1, x).upper, Math.exp(-x), 1e-13);
  expectClose(incompleteGamma(1, x).lower, -Math.expm1(-x), 1e-13);
});

// By definition: P(a, x) − P(a + 1, x) is the Poisson weight, across the change of method at shape 200.
test.each([
  [198.7, 190],
  [199.5, 200],
  [199.9, 260],
  [199.2, 301],
  [5e4, 5.01e4],
])("one more shape at %d, %d takes off one Poisson weight", (shape, x) => {
  const difference = incompleteGamma(shape, x).lower - incompleteGamma(shape + 1, x).lower;
  expect(Math.abs(difference - poissonWeight(shape, x))).toBeLessThan(1e-14);
});

test("the tails are whole at the ends, and bad arguments throw", () => {
  expect(incompleteGamma(3, 0)).toEqual({ lower: 0, upper: 1 });
  expect(incompleteGamma(3, Number.POSITIVE_INFINITY)).toEqual({ lower: 1, upper: 0 });
  expect(() => incompleteGamma(0, 1)).toThrow(/shape/);
  expect(() => incompleteGamma(2, -1)).toThrow(/x must be/);
});

// Taylor: a log(a / x) + x − a is a e²/2 − a e³/3 + … with e = (x − a) / a.
test("the deviance does not cancel where count and mean are close", () => {
  const e = 2 ** -20;
  expectClose(deviance(1e6, 1e6 * (1 + e)), 1e6 * (e ** 2 / 2 - e ** 3 / 3 + e ** 4 / 4), 1e-10);
  expectClose(deviance(4, 20), 4 * Math.log(4 / 20) + 16, 1e-14);
});

// DLMF 8.12.11: the first coefficients as fractions.
test("the uniform expansion begins −1/3, 1/12, … and −1/540, …", () => {
  expect(UNIFORM_GAMMA_COEFFICIENTS[0]?.[0]).toBe(-1 / 3);
  expect(UNIFORM_GAMMA_COEFFICIENTS[0]?.[1]).toBe(1 / 12);
  expect(UNIFORM_GAMMA_COEFFICIENTS[1]?.[0]).toBe(-1 / 540);
  expect(UNIFORM_GAMMA_COEFFICIENTS[2]?.[0]).toBe(25 / 6048);
});
