import { expect, test } from "vitest";
import { incompleteBeta } from "@/lib/statistics/incomplete-beta";
import { expectClose } from "@/tests/reference/read-reference";
import { namedValues } from "@/tests/reference/read-table";

// tests/reference/tails.tsv: mpmath, 45 digits; seven standard deviations to each side, up to a million events among ten.
test.each(["lower", "upper"] as const)("the %s tail is right to 1e-12 wherever it lies", (side) => {
  for (const { a, b, c, value } of namedValues("tails.tsv", `beta.${side}`)) {
    expectClose(incompleteBeta(a, b, c)[side], value, 1e-12);
  }
});

// By definition: with b = 1 the lower tail is x^a, and the arcsine distribution at ¼ holds one third.
test("simple shapes have simple tails", () => {
  expectClose(incompleteBeta(7, 1, 0.3).lower, 0.3 ** 7, 1e-14);
  expectClose(incompleteBeta(0.5, 0.5, 0.25).lower, 1 / 3, 1e-14);
  expectClose(incompleteBeta(1e6, 1e6, 0.5).lower, 0.5, 1e-12);
});

test("the tails are whole at the ends, and bad arguments throw", () => {
  expect(incompleteBeta(3, 2, 0)).toEqual({ lower: 0, upper: 1 });
  expect(incompleteBeta(3, 2, 1)).toEqual({ lower: 1, upper: 0 });
  expect(() => incompleteBeta(0, 1, 0.5)).toThrow(/a must be/);
  expect(() => incompleteBeta(1, -1, 0.5)).toThrow(/b must be/);
  expect(() => incompleteBeta(1, 1, 1.5)).toThrow(/x must lie/);
});
