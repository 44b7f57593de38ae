import { describe, expect, test } from "vitest";
import { failureProbability } from "@/lib/statistics/life/failure-probability";
import { fitLognormal } from "@/lib/statistics/life/fit-lognormal";
import { fitWeibull } from "@/lib/statistics/life/fit-weibull";
import type { FitSource } from "@/lib/statistics/life/life-sample";
import type { LifeRow } from "@/lib/statistics/survival/life-rows";
import { expectClose } from "../../reference/read-reference";
import { generatorFans } from "../survival/reference-lives";
import { fitted, logLikelihoodOf, options } from "./fitted-weibull";

describe("hard cases", () => {
  const life = (entry: number, exit: number, event: boolean, count = 1): LifeRow => ({ entry, exit, event, count });
  const refusal = (source: FitSource, minimumEvents = 1) => {
    const fit = fitWeibull(source, { confidence: 0.95, minimumEvents });
    return fit.kind === "refused" ? fit.reason : fit.kind;
  };

  test("the reasons for having no fit are named", () => {
    expect(refusal([])).toBe("no-exposure");
    expect(refusal([life(0, 0, false, 4)])).toBe("no-exposure");
    expect(refusal([life(0, 90, false, 1000)])).toBe("no-events");
    expect(refusal(generatorFans(), 13)).toBe("too-few-events");
    expect(refusal(generatorFans(), 12)).toBe("fitted");
    expect(refusal([life(0, 0, true), life(0, 9, true, 3)])).toBe("failure-at-age-zero");
  });

  test("a likelihood without a peak is refused, not guessed", () => {
    expect(refusal([life(0, 365, true, 1_000_000)])).toBe("flat-likelihood");
    expect(refusal([life(0, 365, true, 5), life(0, 100, false, 50)])).toBe("flat-likelihood");
    // One inspection age says what share failed by then, and nothing about the shape.
    const once = { entry: 0, after: 0, by: 12, count: 30 };
    expect(refusal([once, { entry: 0, after: 12, by: Number.POSITIVE_INFINITY, count: 70 }])).toBe("flat-likelihood");
    expect(refusal([{ entry: 0, after: 10, by: 20, count: 30 }])).toBe("flat-likelihood");
    expect(refusal([once])).toBe("flat-likelihood");
  });

  // Each of these once came out as a fit short of a peak: the spread can shrink for ever while one bound keeps the failures apart.
  test.each([
    [
      [
        { after: 7, by: 13, count: 4 },
        { after: 0, by: 7, count: 3 },
      ],
    ],
    [
      [
        { after: 3, by: 6, count: 2 },
        { after: 0, by: 3, count: 4 },
        { after: 0, by: 4, count: 4 },
      ],
    ],
    [
      [
        { after: 8, by: 13, count: 2 },
        { after: 3, by: 8, count: 4 },
        { after: 8, by: Number.POSITIVE_INFINITY, count: 3 },
      ],
    ],
  ])("bounds that one age parts completely have no best spread: case %#", (bounds) => {
    const rows = bounds.map((row) => ({ entry: 0, ...row }));
    expect(refusal(rows)).toBe("flat-likelihood");
    const lognormal = fitLognormal(rows, options);
    expect(lognormal.kind === "refused" ? lognormal.reason : lognormal.kind).toBe("flat-likelihood");
  });

  // Once no number: a failed fraction that rounds to 0 or 1 has log odds all the same.
  test("delta limits far outside the data stay in order and inside 0 to 1", () => {
    const late = [life(600, 707, true, 202), life(0, 489, false, 25), life(0, 653, true)];
    for (const fit of [fitWeibull(late, options), fitLognormal(late, options)]) {
      if (fit.kind !== "fitted") throw new Error(fit.reason);
      for (const age of [1e-9, 1, 700, 5000, 1e12]) {
        const { probability, low, high } = failureProbability(fit, { age, confidence: 0.95, interval: "delta" });
        expect(low >= 0 && low <= probability && probability <= high && high <= 1, `${fit.family} at ${age}`).toBe(
          true,
        );
      }
    }
  });

  test("one failure with survivors beyond it has a fit, and its limits may be unbounded", () => {
    const fit = fitted([life(0, 500, true), life(0, 1000, false, 99)]);
    expect(fit.events).toBe(1);
    expect(fit.shape.value).toBeGreaterThan(0);
    expect(Number(fit.shape.profile.low)).toBeLessThan(fit.shape.value);
    expect(fit.scale.profile.high === "unbounded" || fit.scale.profile.high > 1e5).toBe(true);
  });

  test("a million failures at one age among survivors of another", () => {
    const fit = fitted([life(0, 300, true, 1_000_000), life(0, 600, false, 1_000_000)]);
    expectClose(fit.shape.value, shapeOfTwoAges(), 1e-9);
  });

  test("a failure at age 0 counts as within the first day when the caller says so", () => {
    const rows = [life(0, 0, true, 2), life(0, 40, true, 3), life(0, 90, false, 20)];
    const fit = fitWeibull(rows, { ...options, failedAtZero: { within: 1 } });
    const bounded = fitted([
      { entry: 0, after: 0, by: 1, count: 2 },
      { entry: 0, after: 40, by: 40, count: 3 },
      { entry: 0, after: 90, by: Number.POSITIVE_INFINITY, count: 20 },
    ]);
    if (fit.kind !== "fitted") throw new Error(fit.reason);
    expectClose(fit.shape.value, bounded.shape.value, 1e-12);
    expect(fit.events).toBe(5);
  });

  test("a late entrant alone in its risk set adds only the time it was watched", () => {
    const fit = fitted([life(0, 10, true, 4), life(0, 20, false, 6), life(100, 130, true), life(100, 140, false)]);
    const rows = [life(0, 10, true, 4), life(0, 20, false, 6), life(100, 130, true), life(100, 140, false)];
    expectClose(logLikelihoodOf(rows, fit.shape.value, fit.scale.value), fit.logLikelihood, 1e-12);
  });

  // Recovery: quantiles of the true life at evenly spaced fractions, so the fit must come out near the truth.
  test.each([0.1, 0.5, 3, 10, 40])("shape %d is found", (shape) => {
    const rows = Array.from({ length: 2000 }, (_, i) =>
      life(0, 700 * (-Math.log1p(-(i + 0.5) / 2000)) ** (1 / shape), true),
    );
    const fit = fitted(rows);
    expectClose(fit.shape.value, shape, 0.01);
    expectClose(
      Number(fit.shape.profile.high) / fit.shape.value,
      fit.shape.value / Number(fit.shape.profile.low),
      0.01,
    );
  });

  test("a caller's mistake names the argument", () => {
    expect(() => fitWeibull([life(0, 3, true)], { confidence: 1, minimumEvents: 1 })).toThrow(
      "confidence must lie strictly",
    );
    expect(() => fitWeibull([life(0, 3, true)], { confidence: 0.9, minimumEvents: 0 })).toThrow(
      "minimumEvents must be",
    );
    expect(() => fitWeibull([{ entry: 0, after: 5, by: 3, count: 1 }], options)).toThrow(
      "rows[0].by must not be below its after 5; it is 3",
    );
  });
});

/**
 * By hand. With half failed at 1 and half lost at 2 (in units of 300), the slope in the shape b is
 * 1/b − 2^b log 2 / (1 + 2^b); its root by halving.
 */
function shapeOfTwoAges(): number {
  let [low, high] = [0.01, 50];
  for (let i = 0; i < 100; i++) {
    const b = (low + high) / 2;
    if (1 / b > (2 ** b * Math.log(2)) / (1 + 2 ** b)) low = b;
    else high = b;
  }
  return low;
}
