import { expect, test } from "vitest";
import { chainLadder } from "@/lib/statistics/delay/chain-ladder";
import { conditionalChance, futureFailures } from "@/lib/statistics/delay/future-failures";
import { type DelayCount, reportingDelay } from "@/lib/statistics/delay/reporting-delay";
import { poissonPrediction } from "@/lib/statistics/intervals/poisson-prediction";
import { poissonRate } from "@/lib/statistics/intervals/poisson-rate";
import { expectClose, expectPrinted, referenceRows } from "@/tests/reference/read-reference";

function triangle(): readonly (readonly number[])[] {
  const rows = new Map<string, number[]>();
  for (const { origin = "", cumulative } of referenceRows("triangle_raa")) {
    rows.set(origin, [...(rows.get(origin) ?? []), Number(cumulative)]);
  }
  return [...rows.values()];
}

function projected(cumulative: readonly (readonly number[])[]) {
  const result = chainLadder({ cumulative, tailVariance: "mack" });
  if (result.kind !== "projected") throw new Error(`expected a projection, got ${result.kind}`);
  return result;
}

// Mack (1994) data; printed output of a package vignette, read.
test("C01: amounts to come and their standard errors", () => {
  const { origins, toCome, standardError } = projected(triangle());
  const of = (year: number) => origins[year - 1981] ?? { toCome: -1, standardError: -1 };
  expectPrinted("C01", {
    ibnr_1982: of(1982).toCome,
    se_1982: of(1982).standardError,
    ibnr_1986: of(1986).toCome,
    se_1986: of(1986).standardError,
    ibnr_1990: of(1990).toCome,
    se_1990: of(1990).standardError,
    total_ibnr: toCome,
    total_se: standardError,
  });
});

// By definition: amounts in another currency change every result by the rate and nothing else.
test("the chain ladder does not depend on the unit", () => {
  const cents = projected(triangle().map((row) => row.map((amount) => 100 * amount)));
  const whole = projected(triangle());
  expectClose(cents.toCome, 100 * whole.toCome, 1e-12);
  expectClose(cents.standardError, 100 * whole.standardError, 1e-10);
});

// By hand: factor (12 + 9) / (10 + 5) = 1.4, so the last row of 20 grows to 28.
test("a small triangle by hand", () => {
  const { origins, factors } = projected([[10, 12], [5, 9], [20]]);
  expect(factors).toEqual([1.4]);
  expect(origins[2]).toMatchObject({ latest: 20, final: 28, toCome: 8 });
  // σ² = 10 (1.2 − 1.4)² + 5 (1.8 − 1.4)² = 1.2; 28² × (1.2 / 1.96) × (1/20 + 1/15) = 56.
  expect(origins[2]?.standardError).toBeCloseTo(Math.sqrt(56), 10);
});

test("nothing to grow from is a named case, a misshapen triangle throws", () => {
  expect(chainLadder({ cumulative: [[0, 3], [0]], tailVariance: "mack" })).toEqual({
    kind: "cannot-develop",
    delay: 0,
  });
  expect(() =>
    chainLadder({
      cumulative: [
        [1, 2],
        [1, 2, 3],
      ],
      tailVariance: "mack",
    }),
  ).toThrow(/cumulative\[1\]/);
  expect(() => chainLadder({ cumulative: [[1]], tailVariance: "mack" })).toThrow(/two delays/);
});

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

// By definition the reverse-hazard estimate and the chain ladder on counts are one: reported share = 1 / growth to come.
test("the delay distribution is the chain ladder of counts", () => {
  const counts = [[40, 30, 8, 2], [35, 20, 9], [50, 31], [44]];
  const reports = counts.flatMap((row) => row.map((count, delay) => ({ delay, longestSeen: row.length - 1, count })));
  const cumulative = counts.map((row) => row.map((_, i) => row.slice(0, i + 1).reduce((sum, count) => sum + count, 0)));
  const { factors } = projected(cumulative);
  const steps = estimated(reports);
  for (const { delay, within } of steps)
    expectClose(within, 1 / factors.slice(delay).reduce((all, f) => all * f, 1), 1e-12);
  expect(steps.at(-1)).toEqual({ delay: 3, within: 1, standardError: 0 });
});

// AIDS diagnoses by quarter and delay (Davison & Hinkley 1997): truncation recomputed by the definition, cell by cell.
test("recent events with short delays only do not make delays look short", () => {
  const complete = referenceRows("aids_reporting_delay").filter((row) => row.dud === "0");
  const longest = new Map<string, number>();
  for (const { time = "", delay } of complete) longest.set(time, Math.max(longest.get(time) ?? 0, Number(delay)));
  const reports = complete.map(({ time = "", delay, y }) => ({
    delay: Number(delay),
    longestSeen: longest.get(time) ?? 0,
    count: Number(y),
  }));
  const steps = estimated(reports);
  const plain = (delay: number) => {
    const sum = (rows: readonly DelayCount[]) => rows.reduce((total, { count }) => total + count, 0);
    return sum(reports.filter((row) => row.delay <= delay)) / sum(reports);
  };
  for (const { delay, within } of steps.filter((step) => step.delay < 8)) expect(within).toBeLessThan(plain(delay));
  expect(steps.every(({ within }, i) => i === 0 || within >= (steps[i - 1]?.within ?? 0))).toBe(true);
});

function estimated(reports: readonly DelayCount[]) {
  const result = reportingDelay(reports);
  if (result.kind !== "estimated") throw new Error("there were reports");
  return result.steps;
}

test("no reports, and a delay that could not have been seen", () => {
  expect(reportingDelay([])).toEqual({ kind: "no-reports" });
  expect(() => reportingDelay([{ delay: 4, longestSeen: 3, count: 1 }])).toThrow(/reports\[0\].delay/);
});
