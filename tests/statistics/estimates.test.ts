import { expect, test } from "vitest";
import type { ShareMethod } from "@/lib/statistics/estimate";
import { unitSums } from "@/lib/statistics/intervals/robust-rate";
import { shrunkenRateEstimate } from "@/lib/statistics/multiplicity/shrunken-rate";
import { rateEstimate, repeatableRateEstimate } from "@/lib/statistics/rate-estimate";
import { observedExpectedEstimate, rateRatioEstimate } from "@/lib/statistics/ratio-estimate";
import { shareEstimate, sharesOfWhole } from "@/lib/statistics/share-estimate";

const methods: readonly ShareMethod[] = [
  "wilson",
  "wilson-continuity",
  "clopper-pearson",
  "binomial-mid-p",
  "binomial-likelihood",
  "jeffreys",
  "agresti-coull",
];

// Garwood limits of 24 events: 15.37 and 35.71 (case C06, 3.075 and 7.14 over 5 years).
test("a rate carries its count, exposure, both intervals and its method", () => {
  const estimate = rateEstimate({ events: 24, unitYears: 5, level: 0.95, method: "poisson-exact" });
  expect(estimate).toMatchObject({ events: 24, n: 5, point: 4.8, level: 0.95, method: "poisson-exact" });
  expect(estimate.lo).toBeCloseTo(3.0755, 4);
  expect(estimate.hi).toBeCloseTo(7.142, 3);
  expect(estimate.basis).toEqual({ kind: "rate", exposureUnit: "unit-years" });
});

test.each(methods)("a share by %s is the outer interval around the 50 %% one", (method) => {
  const wide = shareEstimate({ events: 7, trials: 40, level: 0.95, method });
  const middle = shareEstimate({ events: 7, trials: 40, level: 0.5, method });
  expect(wide).toMatchObject({ innerLo: middle.lo, innerHi: middle.hi, method, n: 40, point: 0.175 });
  expect(wide.lo).toBeLessThan(wide.innerLo);
  expect(wide.innerHi).toBeLessThan(wide.hi);
});

test("shares of one whole add to 1 and are wider together than alone", () => {
  const shares = sharesOfWhole({ counts: [10, 20, 0, 5], level: 0.95 });
  expect(shares.reduce((sum, share) => sum + share.point, 0)).toBeCloseTo(1, 14);
  const alone = shareEstimate({ events: 20, trials: 35, level: 0.95, method: "wilson" });
  expect(shares[1]?.hi).toBeGreaterThan(alone.hi);
  expect(shares[2]).toMatchObject({ events: 0, lo: 0, method: "goodman" });
});

test("a ratio's denominator is what the other group's rate predicts", () => {
  const result = rateRatioEstimate({
    group: { events: 6, exposure: 20 },
    rest: { events: 30, exposure: 300 },
    level: 0.95,
  });
  if (result.kind !== "estimate") throw new Error("both have events");
  expect(result.estimate).toMatchObject({ n: 2, point: 3, events: 6, basis: { kind: "ratio" } });
  const open = rateRatioEstimate({ group: { events: 2, exposure: 9 }, rest: { events: 0, exposure: 9 }, level: 0.95 });
  expect(open.kind).toBe("no-upper-limit");
  expect(observedExpectedEstimate({ observed: 3, expected: 2, level: 0.95 })).toMatchObject({ point: 1.5, n: 2 });
});

test("failures that come in bunches widen the interval, and the estimate says so", () => {
  const bunched = Array.from({ length: 40 }, (_, i) => ({ events: i % 10 === 0 ? 8 : 0, exposure: 1 }));
  const even = Array.from({ length: 40 }, (_, i) => ({ events: i % 2, exposure: 1 }));
  const exact = rateEstimate({ events: 32, unitYears: 40, level: 0.95, method: "poisson-exact" });
  const robust = repeatableRateEstimate({ ...unitSums(bunched), level: 0.95 });
  expect(robust.method).toBe("poisson-robust");
  expect(robust.hi - robust.lo).toBeGreaterThan(exact.hi - exact.lo);
  expect(robust.innerHi - robust.innerLo).toBeLessThan(robust.hi - robust.lo);
  expect(repeatableRateEstimate({ ...unitSums(even), level: 0.95 }).method).toBe("poisson-exact");
});

// By hand: prior shape 2 over 4 unit-years and 1 event in 1 unit-year give mean 3 / 5.
test("a shrunken rate lies between the group's own and the prior's mean", () => {
  const input = { events: 1, exposure: 1, prior: { shape: 2, rate: 4 }, confidence: 0.9 };
  expect(shrunkenRateEstimate(input)).toMatchObject({
    point: 0.6,
    method: "gamma-poisson",
    events: 1,
    n: 1,
    level: 0.9,
  });
});
