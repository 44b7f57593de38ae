import { expect, test } from "vitest";
import type { Estimate } from "@/lib/statistics/estimate";
import { gradeOf } from "@/lib/statistics/estimate-grade";

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
