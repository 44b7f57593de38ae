import { describe, expect, test } from "vitest";
import { likelihoodRatioTest } from "@/lib/statistics/life/likelihood-ratio-test";
import { normalTail } from "@/lib/statistics/life/normal-tail";
import { weibullMoments } from "@/lib/statistics/life/weibull-moments";
import { expectClose } from "../../reference/read-reference";

describe("upper tail of the normal distribution", () => {
  // 40-digit values: log Q(z) from mpmath.
  test.each([
    [-3, -0.001350809964748194],
    [0, -Math.LN2],
    [5, -15.064998393988725],
    [12.5, -81.57596787074388],
    [40, -804.6084420137538],
  ])("its logarithm at %d", (z, log) => {
    expectClose(normalTail(z).log, log, 1e-12);
  });

  // By definition: the hazard is minus the slope of the log tail.
  test.each([-6, -0.5, 0.5, 3, 11.9, 12.1, 30])("its hazard at %d is the slope of the logarithm", (z) => {
    const slope = (normalTail(z - 1e-5).log - normalTail(z + 1e-5).log) / 2e-5;
    expect(Math.abs(normalTail(z).hazard - slope)).toBeLessThan(1e-8 * Math.max(1, slope));
  });
});

describe("Weibull moments", () => {
  // By hand: shape 1 is exponential; shape 2 has mean √π / 2 and variance 1 − π / 4.
  test("shapes 1 and 2", () => {
    const one = weibullMoments({ shape: 1, scale: 7 });
    expectClose(one.mean, 7, 1e-14);
    expectClose(one.standardDeviation, 7, 1e-14);
    const two = weibullMoments({ shape: 2, scale: 1 });
    expectClose(two.mean, Math.sqrt(Math.PI) / 2, 1e-14);
    expectClose(two.standardDeviation, Math.sqrt(1 - Math.PI / 4), 1e-13);
  });

  // For a large shape log age is close to a Gumbel variable of spread 1 / shape: standard deviation π / (√6 shape).
  test("a shape of a million keeps its digits", () => {
    expectClose(weibullMoments({ shape: 1e6, scale: 1 }).standardDeviation, Math.PI / Math.sqrt(6) / 1e6, 1e-5);
  });
});

describe("likelihood-ratio test", () => {
  // 3.841459 is the 95 % point of chi-square on one degree of freedom, 5.991465 on two.
  test("gains of half the 95 %% points have probability 5 %%", () => {
    expect(
      likelihoodRatioTest({ restricted: -10, full: -10 + 3.841458820694124 / 2, degreesOfFreedom: 1 }).probability,
    ).toBeCloseTo(0.05, 10);
    expect(
      likelihoodRatioTest({ restricted: -10, full: -10 + 5.991464547107979 / 2, degreesOfFreedom: 2 }).probability,
    ).toBeCloseTo(0.05, 10);
  });

  test("a richer model that fits worse is a mistake; one that fits as well is no news", () => {
    expect(() => likelihoodRatioTest({ restricted: -10, full: -11, degreesOfFreedom: 1 })).toThrow(
      "cannot come from nested models",
    );
    expect(likelihoodRatioTest({ restricted: -10, full: -10, degreesOfFreedom: 1 })).toEqual({
      statistic: 0,
      probability: 1,
    });
  });
});
