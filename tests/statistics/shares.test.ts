import { expect, test } from "vitest";
import { agrestiCoull } from "@/lib/statistics/intervals/agresti-coull";
import { binomialLikelihood } from "@/lib/statistics/intervals/binomial-likelihood";
import { binomialMidP } from "@/lib/statistics/intervals/binomial-mid-p";
import { clopperPearson } from "@/lib/statistics/intervals/clopper-pearson";
import type { Interval } from "@/lib/statistics/intervals/interval";
import { jeffreys } from "@/lib/statistics/intervals/jeffreys";
import { multinomialScores } from "@/lib/statistics/intervals/multinomial-scores";
import { sisonGlaz } from "@/lib/statistics/intervals/sison-glaz";
import { wilson } from "@/lib/statistics/intervals/wilson";
import { expectClose, expectPrinted } from "@/tests/reference/read-reference";

function all(events: number, trials: number, confidence = 0.95): Readonly<Record<string, Interval>> {
  const input = { events, trials, confidence };
  return {
    wilson: wilson({ ...input, continuityCorrection: false }),
    wilsoncc: wilson({ ...input, continuityCorrection: true }),
    cp: clopperPearson(input),
    midp: binomialMidP(input),
    lik: binomialLikelihood(input),
    jeffreys: jeffreys(input),
    agresti: agrestiCoull(input),
  };
}

function ends(intervals: Readonly<Record<string, Interval>>, names: readonly string[]): Record<string, number> {
  return Object.fromEntries(
    names.flatMap((name) => [
      [`${name}_lo`, intervals[name]?.low ?? Number.NaN],
      [`${name}_hi`, intervals[name]?.high ?? Number.NaN],
    ]),
  );
}

// Newcombe (1998), Statistics in Medicine 17, 857-872, table I; Jeffreys by Brown, Cai & DasGupta (2001). Wilson limits
// of the first case and most of the other two were read in stored sources, the rest is from memory or recomputed;
// each print says which in tests/reference/stat-cases.json.
test("B01: seven intervals for 81 of 263", () => {
  expectPrinted("B01", ends(all(81, 263), ["wilson", "wilsoncc", "cp", "midp", "lik", "jeffreys"]));
});

test("B02: seven intervals for 15 of 148", () => {
  expectPrinted("B02", ends(all(15, 148), ["wilson", "wilsoncc", "cp", "midp", "jeffreys"]));
});

test("B04: seven intervals for 1 of 29", () => {
  expectPrinted("B04", ends(all(1, 29), ["wilson", "wilsoncc", "cp", "midp", "lik", "jeffreys"]));
});

// Sison & Glaz (1995), example 1: three-decimal table, read. Its 0.114 for the second class is 0.11349.
test("B05: simultaneous intervals for seven classes", () => {
  const counts = [56, 72, 73, 59, 62, 87, 58];
  const tables = {
    wilson: multinomialScores({ counts, confidence: 0.95, method: "wilson" }),
    qh: multinomialScores({ counts, confidence: 0.95, method: "quesenberry-hurst" }),
    goodman: multinomialScores({ counts, confidence: 0.95, method: "goodman" }),
    sison: sisonGlaz({ counts, confidence: 0.95 }),
  };
  const results = Object.entries(tables).flatMap(([name, intervals]) =>
    intervals.flatMap(({ low, high }, i) => [
      [`${name}${i + 1}_lo`, low] as const,
      [`${name}${i + 1}_hi`, high] as const,
    ]),
  );
  expectPrinted("B05", Object.fromEntries(results));
});

// Sison & Glaz (1995), example 2: read.
test("B07: simultaneous intervals for fifty equal classes", () => {
  const counts = new Array<number>(50).fill(5);
  const goodman = multinomialScores({ counts, confidence: 0.95, method: "goodman" })[0];
  const sison = sisonGlaz({ counts, confidence: 0.95 })[0];
  expectPrinted("B07", {
    goodman_lo: goodman?.low ?? -1,
    goodman_hi: goodman?.high ?? -1,
    sison_lo: sison?.low ?? -1,
    sison_hi: sison?.high ?? -1,
  });
});

/** P(X <= k) of a binomial, by Pascal's triangle: shares no code with lib/statistics. */
function atMost(k: number, trials: number, p: number): number {
  let row = [1];
  for (let n = 0; n < trials; n++) {
    row = Array.from({ length: n + 2 }, (_, i) => (row[i] ?? 0) * (1 - p) + (row[i - 1] ?? 0) * p);
  }
  return row.slice(0, k + 1).reduce((sum, part) => sum + part, 0);
}

// By definition: each exact limit leaves 2.5 % beyond the observed count, each mid-P limit counts it half.
test.each([
  [1, 12],
  [7, 20],
  [39, 40],
])("exact and mid-P limits of %i in %i leave 2.5 %% in each tail", (events, trials) => {
  const exact = clopperPearson({ events, trials, confidence: 0.95 });
  expect(atMost(events, trials, exact.high)).toBeCloseTo(0.025, 12);
  expect(1 - atMost(events - 1, trials, exact.low)).toBeCloseTo(0.025, 12);
  const mid = binomialMidP({ events, trials, confidence: 0.95 });
  expect((atMost(events, trials, mid.high) + atMost(events - 1, trials, mid.high)) / 2).toBeCloseTo(0.025, 12);
  expect(1 - (atMost(events, trials, mid.low) + atMost(events - 1, trials, mid.low)) / 2).toBeCloseTo(0.025, 12);
});

// By definition: at a likelihood limit twice the log-likelihood ratio is the chi-square point 3.841458820694124.
test.each([
  [1, 29],
  [81, 263],
  [3, 1_000_000],
])("likelihood limits of %i in %i are as unlikely as chi-square allows", (events, trials) => {
  const { point, low, high } = binomialLikelihood({ events, trials, confidence: 0.95 });
  const log = (p: number) => events * Math.log(p) + (trials - events) * Math.log1p(-p);
  for (const limit of [low, high]) expectClose(2 * (log(point) - log(limit)), 3.841458820694124, 1e-8);
});

// By definition: a Wilson limit p solves |share − p| = z √(p (1 − p) / n).
test.each([
  [1, 3],
  [200, 263],
])("Wilson limits of %i in %i solve their equation", (events, trials) => {
  const { point, low, high } = wilson({ events, trials, confidence: 0.95, continuityCorrection: false });
  for (const p of [low, high]) {
    expectClose(Math.abs(point - p), 1.959963984540054 * Math.sqrt((p * (1 - p)) / trials), 1e-12);
  }
});

test.each([0.001, 0.2, 0.999999])("mid-P limits exist at confidence %d", (confidence) => {
  const { low, high } = binomialMidP({ events: 1, trials: 2, confidence });
  expect(low).toBeLessThan(high);
  expectClose((atMost(1, 2, high) + atMost(0, 2, high)) / 2, (1 - confidence) / 2, 1e-8);
});

test("no event and all events: limits end at 0 and 1, and mirror each other", () => {
  const none = all(0, 24);
  const every = all(24, 24);
  for (const name of Object.keys(none)) {
    expect(none[name]?.low, name).toBe(0);
    expect(every[name]?.high, name).toBe(1);
    expectClose(1 - (every[name]?.low ?? 0), none[name]?.high ?? 0, 1e-12);
  }
  expectClose(none.cp?.high ?? 0, 1 - 0.025 ** (1 / 24), 1e-12); // (1 − p)²⁴ = 0.025, by hand: 14.2 in 100
});

test("Agresti-Coull never leaves 0..1", () => {
  expect(agrestiCoull({ events: 1, trials: 40, confidence: 0.99 }).low).toBe(0);
  expect(agrestiCoull({ events: 39, trials: 40, confidence: 0.99 }).high).toBe(1);
});

test("arguments outside their range throw", () => {
  expect(() => clopperPearson({ events: 4, trials: 3, confidence: 0.95 })).toThrow(
    "events must not exceed trials (3); it is 4",
  );
  expect(() => jeffreys({ events: 0, trials: 0, confidence: 0.95 })).toThrow(/trials/);
  expect(() => binomialMidP({ events: 0, trials: 5, confidence: 1 })).toThrow(/confidence/);
  expect(() => multinomialScores({ counts: [4], confidence: 0.95, method: "goodman" })).toThrow(/two classes/);
  expect(() => sisonGlaz({ counts: [0, 0], confidence: 0.95 })).toThrow(/one event/);
});
