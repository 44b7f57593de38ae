import { expect, test } from "vitest";
import { conditionalChance, futureFailures } from "@/lib/statistics/delay/future-failures";
import { poissonPrediction } from "@/lib/statistics/intervals/poisson-prediction";
import { poissonRate } from "@/lib/statistics/intervals/poisson-rate";
import { expectPrinted } from "@/tests/reference/read-reference";

// Escobar & Meeker (1999), Technometrics 41: printed values from memory, recomputed.
test("C03: failures in the next twelve months of one cohort", () => {
  const hazard = (months: number) => (months / 1152) ** 1.518;
  const rho = conditionalChance({ hazardFrom: hazard(48), hazardTo: hazard(60) });
  const { expected, high } = futureFailures({ units: 9920, chance: rho, confidence: 0.95 });
  expectPrinted("C03", { rho, expected, naive_upper_95: high });
});

// By definition: P(at least low) >= 95 % > P(at least low + 1), and P(at most high) >= 95 % > P(at most high − 1).
test("the limits of future failures are the outermost that hold the wanted confidence", () => {
  const { low, high } = futureFailures({ units: 50, chance: 0.1, confidence: 0.95 });
  const atMost = (k: number) => {
    let term = 0.9 ** 50;
    let sum = k < 0 ? 0 : term;
    for (let i = 1; i <= k; i++) sum += term *= ((50 - i + 1) / i) * (0.1 / 0.9);
    return sum;
  };
  expect(1 - atMost(low - 1)).toBeGreaterThanOrEqual(0.95);
  expect(1 - atMost(low)).toBeLessThan(0.95);
  expect(atMost(high)).toBeGreaterThanOrEqual(0.95);
  expect(atMost(high - 1)).toBeLessThan(0.95);
  expect(() => conditionalChance({ hazardFrom: 2, hazardTo: 1 })).toThrow(/hazardTo/);
});

// Nelson (1970; 1982 p 203): printed output read in a stored package source.
test("C05: upper prediction limit of a future Poisson count", () => {
  const { high } = poissonPrediction({ ...shutdowns, side: "upper", bound: "first-rejected" });
  expectPrinted("C05", { upl: high.kind === "count" ? high.count : -1 });
});

const shutdowns = { pastEvents: 36, pastExposure: 20, futureExposure: 1, confidence: 0.95 };

/** P(past <= x) given the total, each event being past with chance `past`: by Pascal's triangle. */
function pastAtMost(x: number, total: number, past: number): number {
  let row = [1];
  for (let n = 0; n < total; n++) {
    row = Array.from({ length: n + 2 }, (_, i) => (row[i] ?? 0) * (1 - past) + (row[i - 1] ?? 0) * past);
  }
  return row.slice(0, x + 1).reduce((sum, part) => sum + part, 0);
}

// By definition, by separate code: the first future counts that the past one rejects at 2.5 % on either side.
test.each([
  { pastEvents: 36, pastExposure: 20, futureExposure: 10 },
  { pastEvents: 9, pastExposure: 3, futureExposure: 7 },
])("two-sided prediction limits are the first rejected counts: %o", (past) => {
  const chance = past.pastExposure / (past.pastExposure + past.futureExposure);
  const limits = poissonPrediction({ ...past, confidence: 0.95, side: "both", bound: "first-rejected" });
  const accepted = poissonPrediction({ ...past, confidence: 0.95, side: "both", bound: "last-accepted" });
  if (limits.high.kind !== "count" || accepted.high.kind !== "count") throw new Error("both sides were asked for");
  const tooMany = (y: number) => pastAtMost(past.pastEvents, past.pastEvents + y, chance) <= 0.025;
  const tooFew = (y: number) => 1 - pastAtMost(past.pastEvents - 1, past.pastEvents + y, chance) <= 0.025;
  expect([tooMany(limits.high.count), tooMany(limits.high.count - 1)]).toEqual([true, false]);
  expect([tooFew(limits.low), tooFew(limits.low + 1)]).toEqual([true, false]);
  expect(accepted.high.count).toBe(limits.high.count - 1);
  expect(accepted.low).toBe(limits.low + 1);
});

test("no past event: the lower limit is 0 and one side leaves the other open", () => {
  const input = {
    pastEvents: 0,
    pastExposure: 5,
    futureExposure: 5,
    confidence: 0.95,
    bound: "first-rejected",
  } as const;
  expect(poissonPrediction({ ...input, side: "lower" })).toEqual({ point: 0, low: 0, high: { kind: "none" } });
  // (1/2)^y <= 0.05 first holds at y = 5, by hand.
  expect(poissonPrediction({ ...input, side: "upper" }).high).toEqual({ kind: "count", count: 5 });
});

// Hahn & Meeker (1991), chapter 7: from memory; the lower limit recomputed.
test("C06: unscheduled shutdowns per year", () => {
  const { point, low, high } = poissonRate({ events: 24, exposure: 5, confidence: 0.95 });
  expectPrinted("C06", { rate: point, lo: low, hi: high });
});
