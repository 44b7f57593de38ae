import { expect, test } from "vitest";
import { commonPace, drawnPace, evenedMonths } from "@/lib/forecast/common-pace";
import { randomSource } from "../statistics/random-source";

const random = randomSource(31);

/** Twenty components of five a month; all of them busier or quieter together by the pace of each month. */
const company = (pace: (month: number) => number) => {
  const paces = Array.from({ length: 60 }, (_, month) => pace(month));
  return Array.from({ length: 20 }, () => paces.map((factor) => random.poisson(5 * factor)));
};

test("components that go each their own way are found to have a pace in common about once in twenty", () => {
  const found = Array.from({ length: 60 }, () => commonPace(company(() => 1))).filter(({ variance }) => variance > 0);
  expect(found.length).toBeLessThanOrEqual(9);
});

// By hand: paces of 0.8 and 1.2 have a variance of 0.04; the mean of the twelve months before adds a twelfth to it.
test("a pace in common is found with its variance, and drawn as it was found", () => {
  const found = commonPace(company(() => (random.uniform() < 0.5 ? 0.8 : 1.2)));
  expect(found.p).toBeLessThan(0.01);
  expect(found.variance).toBeGreaterThan(0.025);
  expect(found.variance).toBeLessThan(0.06);
  const pace = [...(drawnPace({ variance: 0.04, p: 0.01 }, 4000) ?? [])];
  const mean = pace.reduce((sum, factor) => sum + factor, 0) / pace.length;
  expect(Math.abs(mean - 1)).toBeLessThan(0.015);
  expect(Math.abs(pace.reduce((sum, factor) => sum + (factor - mean) ** 2, 0) / pace.length - 0.04)).toBeLessThan(
    0.004,
  );
  expect(drawnPace({ variance: 0, p: 1 }, 10)).toBeUndefined();
});

test("months are as long as each other once they are evened, and a season is none", () => {
  const long = evenedMonths([31, 28.25, 31], 0);
  expect(long[0]).toBeCloseTo(long[1] ?? 0, 9);
  const wave = Array.from({ length: 60 }, (_, i) => Math.round(50 * (1 + 0.5 * Math.cos((2 * Math.PI * i) / 12))));
  const evened = evenedMonths(wave, 0);
  expect(Math.max(...evened) / Math.min(...evened)).toBeLessThan(1.3);
});

test("too few months, or one component, have nothing in common that could be told", () => {
  expect(commonPace(company(() => 1).map((counts) => counts.slice(0, 30))).variance).toBe(0);
  expect(commonPace([[1, 2, 3]]).variance).toBe(0);
  expect(commonPace([]).variance).toBe(0);
});
