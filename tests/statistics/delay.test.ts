import { expect, test } from "vitest";
import { chainLadder } from "@/lib/statistics/delay/chain-ladder";
import { type DelayCount, reportingDelay } from "@/lib/statistics/delay/reporting-delay";
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
