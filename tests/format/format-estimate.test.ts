import { describe, expect, test } from "vitest";
import { describeEstimate, type EstimateWording, formatEstimate } from "@/lib/format/format-estimate";
import type { Estimate } from "@/lib/statistics/estimate";
import { poissonRate } from "@/lib/statistics/intervals/poisson-rate";
import { rateEstimate } from "@/lib/statistics/rate-estimate";
import { shareEstimate } from "@/lib/statistics/share-estimate";

const rate = (events: number, exposure: number) =>
  rateEstimate({ events, unitYears: exposure, level: 0.95, method: "poisson-exact" });
const share = (events: number, trials: number) =>
  shareEstimate({ events, trials, level: 0.95, method: "clopper-pearson" });
const say = (estimate: Estimate, wording?: EstimateWording) => describeEstimate(formatEstimate(estimate, wording));

describe("a rate", () => {
  // 14 in 96: exact limits of a count of 14 are 7.654 and 23.490 (printed in most tables of Poisson limits).
  test("is number, range, count, in 100 a year", () => {
    expect(say(rate(14, 96))).toBe("15 in 100 a year (8 to 24), 14 failures in 96 unit-years");
  });

  test("below 1 in 100 is said in 1,000, unless its table says all in 100", () => {
    const rare = rate(40, 8000);
    expect(say(rare)).toBe("5 in 1,000 a year (4 to 7), 40 failures in 8,000 unit-years");
    expect(say(rare, { frame: 100 })).toBe("0.5 in 100 a year (0.4 to 0.7), 40 failures in 8,000 unit-years");
  });

  test("whose few failures round to nothing is said to be under 1, not 0", () => {
    const few = rate(1, 400);
    expect(say(few, { frame: 100 })).toMatch(
      /^0\.3 in 100 a year \(0\.0 to 1\.4\), 1 failure in 400 unit-years — loose$/,
    );
    const wide = { ...few, point: 0.004, lo: 0.0001, hi: 0.03 };
    expect(say(wide, { frame: 100 })).toMatch(/^under 1 in 100 a year \(0 to 3\)/);
  });

  test("of calls says calls, and of one call says call", () => {
    expect(say(rate(14, 96), { counted: "calls" })).toContain("14 calls in 96 unit-years");
    expect(say(rate(1, 96), { counted: "calls" })).toContain("1 call in 96 unit-years");
  });

  test("from under 10 unit-years is refused", () => {
    expect(say(rate(1, 6.2))).toBe("1 failure in 6.2 unit-years — too few to give a rate");
  });
});

describe("a share", () => {
  // Clopper–Pearson for 3 of 12 is 5.5 to 57.2 %, printed in many textbooks.
  test("with few events is called loose", () => {
    expect(say(share(3, 12))).toBe("25 in 100 (5 to 57), 3 of 12 — loose");
  });

  // Exact upper limit with none of 24: 1 − 0.025^(1/24) = 14.2 %.
  test("with no event is a statement about its upper limit", () => {
    expect(say(share(0, 24))).toBe("0 of 24 — anything up to 14 in 100 would still fit");
  });

  test("of fewer than 10 is refused, but its range stays for the table", () => {
    const words = formatEstimate(share(1, 6));
    expect(describeEstimate(words)).toBe("1 of 6 — too few to give a rate");
    // Exact limits of 1 of 6: 1 − 0.975^(1/6) = 0.42 % and 64.1 %.
    expect(words).toMatchObject({ kind: "too-few", range: "0 to 64 in 100" });
  });

  test("that is narrow shows a decimal, one narrower still two", () => {
    expect(say({ ...share(500, 10_000), lo: 0.0459, hi: 0.0544 })).toBe("5.0 in 100 (4.6 to 5.4), 500 of 10,000");
    expect(say({ ...share(500, 10_000), lo: 0.0496, hi: 0.0505 })).toBe("5.00 in 100 (4.96 to 5.05), 500 of 10,000");
  });
});

describe("a ratio", () => {
  const ratio: Estimate = {
    ...rate(54, 30),
    point: 1.8,
    lo: 1.1,
    hi: 2.9,
    method: "rate-ratio-exact",
    basis: { kind: "ratio" },
  };

  test("says times what", () => {
    expect(say(ratio)).toBe("1.8 times the fleet (1.1 to 2.9), 54 failures, 30 expected");
    expect(say(ratio, { against: "what its ages predict" })).toContain("1.8 times what its ages predict");
  });
});

test("an estimate that cannot be is the caller's mistake", () => {
  const good = share(3, 12);
  expect(() => formatEstimate({ ...good, n: 0 })).toThrow("estimate.n must be finite, above 0; it is 0");
  expect(() => formatEstimate({ ...good, events: 1.5 })).toThrow(RangeError);
  expect(() => formatEstimate({ ...good, lo: 0.6, hi: 0.5 })).toThrow("not above a finite hi");
  expect(() => formatEstimate({ ...good, hi: Number.POSITIVE_INFINITY })).toThrow("not above a finite hi");
  expect(() => formatEstimate({ ...good, point: Number.NaN })).toThrow("estimate.point");
});

// The words hold the limits that the interval has, for every count: no rounding moves a limit by more than half a step.
test.each([10, 11, 25, 80, 300, 999])("the range said for %i failures is the interval's, to half a unit", (events) => {
  const { low, high } = poissonRate({ events, exposure: 1000, confidence: 0.95 });
  const words = formatEstimate(rate(events, 1000), { frame: 1000 });
  if (words.kind !== "figure") throw new Error(`expected a figure, got ${words.kind}`);
  const [from, to] = words.range.replaceAll(",", "").split(" to ").map(Number);
  expect(Math.abs((from ?? Number.NaN) - 1000 * low)).toBeLessThanOrEqual(0.5);
  expect(Math.abs((to ?? Number.NaN) - 1000 * high)).toBeLessThanOrEqual(0.5);
});
