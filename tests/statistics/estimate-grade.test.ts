import { describe, expect, test } from "vitest";
import type { Estimate } from "@/lib/statistics/estimate";
import { gradeOf } from "@/lib/statistics/estimate-grade";
import { observedExpectedEstimate, rateRatioEstimate } from "@/lib/statistics/ratio-estimate";

const base: Estimate = {
  events: 10,
  n: 30,
  point: 1,
  lo: 0.2,
  hi: 1.8,
  innerLo: 0.8,
  innerHi: 1.2,
  level: 0.95,
  method: "poisson-exact",
  basis: { kind: "rate", exposureUnit: "unit-years" },
};

// Boundaries in pairs: the last value that is firm and the first that is not.
test.each([
  [{}, "firm"],
  [{ events: 9 }, "loose"],
  [{ n: 29.9 }, "loose"],
  [{ hi: 1.81 }, "loose"],
  [{ n: 10, events: 3 }, "loose"],
  [{ n: 9.9, events: 9 }, "thin"],
  [{ events: 0, point: 0, lo: 0, hi: 0.01, n: 400 }, "loose"],
] as const)("%o is %s", (change, grade) => {
  expect(gradeOf({ ...base, ...change })).toBe(grade);
});

describe("a ratio", () => {
  const ratio: Estimate = { ...base, lo: 1.5, hi: 6, point: 3, basis: { kind: "ratio" }, method: "rate-ratio-exact" };

  // Boundaries in pairs again. The expected events are no exposure: 5 of them are no reason to refuse.
  test.each([
    [{ events: 10, n: 5 }, "firm"],
    [{ events: 10, n: 0.4 }, "firm"],
    [{ events: 9, n: 5 }, "loose"],
    [{ hi: 6.01 }, "loose"],
    [{ events: 5, n: 0.2 }, "loose"],
    [{ events: 4, n: 5 }, "loose"],
    [{ events: 4, n: 4.99 }, "thin"],
    [{ events: 0, n: 5, point: 0, lo: 0, hi: 0.74 }, "loose"],
    [{ events: 0, n: 4.9, point: 0, lo: 0, hi: 0.753 }, "thin"],
    [{ events: 20, lo: 0.9, hi: 90 }, "loose"],
    [{ events: 20, lo: 0.9, hi: 90.1 }, "thin"],
    [{ events: 20, lo: 1.1, hi: 800 }, "loose"],
  ] as const)("%o is %s", (change, grade) => {
    expect(gradeOf({ ...ratio, ...change })).toBe(grade);
  });

  // By definition of the exact limits: ten events are the fewest whose range spans no more than a factor of 4.
  test("against a sure reference is firm from ten events on, whatever was expected", () => {
    for (const expected of [1, 6, 40, 5000]) {
      const of = (observed: number) => gradeOf(observedExpectedEstimate({ observed, expected, level: 0.95 }));
      expect(of(10)).toBe("firm");
      expect(of(9)).toBe("loose");
    }
  });

  test("against a reference of few events is not firm, however many the group has", () => {
    const against = (events: number) =>
      rateRatioEstimate({ group: { events: 400, exposure: 90 }, rest: { events, exposure: 90 }, level: 0.95 });
    const grade = (events: number) => {
      const result = against(events);
      return result.kind === "estimate" ? gradeOf(result.estimate) : result.kind;
    };
    expect([1, 4, 200].map(grade)).toEqual(["loose", "loose", "firm"]);
  });
});
