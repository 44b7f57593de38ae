import { expect, test } from "vitest";
import {
  binomialAtLeast,
  binomialAtMost,
  binomialProbability,
  binomialQuantile,
} from "@/lib/statistics/discrete/binomial";
import {
  negativeBinomialAtLeast,
  negativeBinomialAtMost,
  negativeBinomialProbability,
  negativeBinomialQuantile,
} from "@/lib/statistics/discrete/negative-binomial";
import { poissonAtLeast, poissonAtMost, poissonProbability, poissonQuantile } from "@/lib/statistics/discrete/poisson";
import { expectClose } from "@/tests/reference/read-reference";
import { namedValues } from "@/tests/reference/read-table";

// R 4.2.2, tests/reference/distributions.R.
test.each<[string, (a: number, b: number, c: number) => number]>([
  ["dpois", poissonProbability],
  ["ppois", poissonAtMost],
  ["upois", poissonAtLeast],
  ["dbinom", (count, trials, chance) => binomialProbability(count, { trials, chance })],
  ["pbinom", (count, trials, chance) => binomialAtMost(count, { trials, chance })],
  ["ubinom", (count, trials, chance) => binomialAtLeast(count, { trials, chance })],
  ["dnbinom", (count, size, mean) => negativeBinomialProbability(count, { size, mean })],
  ["pnbinom", (count, size, mean) => negativeBinomialAtMost(count, { size, mean })],
  ["unbinom", (count, size, mean) => negativeBinomialAtLeast(count, { size, mean })],
])("%s agrees with R to 1e-10 in both tails", (name, probability) => {
  for (const { a, b, c, value } of namedValues("distributions-from-r.csv", name)) {
    if (value > 1e-290) expectClose(probability(a, b, c), value, 1e-10);
  }
});

test.each<[string, (a: number, b: number, c: number) => number]>([
  ["qpois", poissonQuantile],
  ["qbinom", (p, trials, chance) => binomialQuantile(p, { trials, chance })],
  ["qnbinom", (p, size, mean) => negativeBinomialQuantile(p, { size, mean })],
])("%s agrees with R exactly (which prints some zeros as -0)", (name, quantile) => {
  for (const { a, b, c, value } of namedValues("distributions-from-r.csv", name))
    expect(quantile(a, b, c)).toBe(value + 0);
});

// By definition: a quantile is the first count that reaches the probability, at an exact tie too.
test("a tie belongs to the smaller count", () => {
  expect(binomialQuantile(0.5, { trials: 1, chance: 0.5 })).toBe(0);
  expect(binomialQuantile(0.75, { trials: 2, chance: 0.5 })).toBe(1);
  expect(poissonQuantile(Math.exp(-2) * 3, 2)).toBe(1);
});

test("empty and certain cases", () => {
  expect(poissonAtMost(0, 0)).toBe(1);
  expect(poissonAtLeast(1, 0)).toBe(0);
  expect(poissonQuantile(0.99, 0)).toBe(0);
  expect(binomialProbability(3, { trials: 3, chance: 1 })).toBe(1);
  expect(binomialAtMost(-1, { trials: 3, chance: 0.4 })).toBe(0);
  expect(binomialAtLeast(4, { trials: 3, chance: 0.4 })).toBe(0);
  expect(negativeBinomialAtMost(0, { size: 2, mean: 0 })).toBe(1);
  expect(negativeBinomialProbability(0, { size: 2, mean: 0 })).toBe(1);
  expect(() => binomialAtMost(1, { trials: 3, chance: 1.1 })).toThrow(/chance/);
  expect(() => negativeBinomialAtMost(1, { size: 0, mean: 1 })).toThrow(/size/);
});
