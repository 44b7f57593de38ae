import { expect, test } from "vitest";
import { drawWeibull } from "@/synthetic-data/draws";
import { randomOf } from "@/synthetic-data/random";
import { weibullRenewals } from "@/synthetic-data/renewal";

// By definition: with shape 1 failures are a Poisson process, so their expected number is the age itself.
test("a life without memory fails once per scale, at every age", () => {
  const renewals = weibullRenewals(1, 4);
  for (const age of [0.01, 0.3, 1, 2.5, 3.9]) expect(renewals(age)).toBeCloseTo(age, 5);
});

// By simulation with another route to the count: 200,000 histories, so 5 standard errors are about 0.011 at age 2.
test.each([
  [0.85, 0.1],
  [0.85, 1.2],
  [1.4, 0.6],
  [2.6, 1.8],
])("shape %d gives by age %d the number of failures that simulated histories have", (shape, age) => {
  const random = randomOf(99, Math.round(100 * shape));
  const histories = 200_000;
  let failures = 0;
  for (let i = 0; i < histories; i++) {
    for (let at = drawWeibull(random, { shape, scale: 1 }); at < age; at += drawWeibull(random, { shape, scale: 1 }))
      failures++;
  }
  const expected = weibullRenewals(shape, 2)(age);
  expect(Math.abs(failures / histories - expected)).toBeLessThan(5 * Math.sqrt(expected / histories));
});

// By expansion: for short ages only the first failure matters, and its chance is 1 - exp(-age^shape).
test("a wearing part fails at first as often as its first life ends", () => {
  const age = 0.2;
  const first = 1 - Math.exp(-(age ** 2.6));
  const renewals = weibullRenewals(2.6, 2)(age);
  expect(renewals).toBeGreaterThanOrEqual(first - 1e-7);
  expect(renewals).toBeLessThan(first + first ** 2);
});
