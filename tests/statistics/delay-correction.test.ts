import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { correctedCount } from "@/lib/statistics/delay/corrected-count";
import { type DelayCount, type EstimatedDelay, reportingDelay } from "@/lib/statistics/delay/reporting-delay";
import { shareWithin } from "@/lib/statistics/delay/share-within";
import { expectClose, referenceRows } from "@/tests/reference/read-reference";

function estimated(reports: readonly DelayCount[]): EstimatedDelay {
  const result = reportingDelay(reports);
  if (result.kind !== "estimated") throw new Error("there were reports");
  return result;
}

/** A distribution that is known and not estimated. */
function known(within: readonly number[]): EstimatedDelay {
  return { kind: "estimated", steps: within.map((share, delay) => ({ delay, within: share, standardError: 0 })) };
}

function corrected(input: Parameters<typeof correctedCount>[0]) {
  const result = correctedCount(input);
  if (result.kind !== "corrected") throw new Error(`expected a corrected count, got ${result.kind}`);
  return result;
}

describe("by hand", () => {
  // Days 0, 1 and 2 ago can show 0.2, 0.5 and 0.8 of their events: 1.5 of 3. So 12 on record become 24.
  test("a period is divided by the share that can be on record", () => {
    const periods = [{ ages: [0, 1, 2], reports: 12 }];
    const result = corrected({ periods, delay: known([0.2, 0.5, 0.8, 1]), fewestTogether: 10, level: 0.95 });
    expect(result.corrected).toBeCloseTo(24, 12);
    // 12 more to come by a negative binomial of size 12.5 and mean 12.5: R 4.2.2, qnbinom(c(0.025, 0.975), 12.5, 0.5).
    expect([result.lo, result.hi]).toEqual([12 + 4, 12 + 24]);
  });

  // 3 on record are too few alone: with the next period 3 + 9 = 12 in days that show 0.5 + 1, so 12 × 2 / 1.5 = 16.
  test("periods with few reports are taken together, and the rest joins the last", () => {
    const periods = [
      { ages: [0], reports: 3 },
      { ages: [1], reports: 9 },
      { ages: [2], reports: 4 },
    ];
    const delay = known([0.5, 1]);
    expect(corrected({ periods, delay, fewestTogether: 10, level: 0.9 }).corrected).toBeCloseTo((16 * 3) / 2.5, 12);
    expect(corrected({ periods, delay, fewestTogether: 4, level: 0.9 }).corrected).toBeCloseTo(20, 12);
    expect(corrected({ periods, delay, fewestTogether: 0, level: 0.9 }).corrected).toBeCloseTo(6 + 9 + 4, 12);
  });

  test("what is complete stays as it is, without a range", () => {
    const periods = [{ ages: [5, 6], reports: 7 }];
    expect(correctedCount({ periods, delay: known([0.5, 1]), fewestTogether: 1, level: 0.95 })).toEqual({
      kind: "corrected",
      events: 7,
      corrected: 7,
      lo: 7,
      hi: 7,
      level: 0.95,
    });
  });

  test("none on record is not none to come, and too young a period says so", () => {
    const none = corrected({
      periods: [{ ages: [0], reports: 0 }],
      delay: known([0.5, 1]),
      fewestTogether: 10,
      level: 0.95,
    });
    expect(none).toMatchObject({ events: 0, corrected: 0, lo: 0 });
    expect(none.hi).toBeGreaterThan(0);
    const young = { periods: [{ ages: [0], reports: 0 }], delay: known([0, 0.5, 1]), fewestTogether: 10, level: 0.95 };
    expect(correctedCount(young)).toEqual({ kind: "too-recent", events: 0 });
  });

  test("a caller's mistake is named", () => {
    const delay = known([0.5, 1]);
    const call = (change: object) => () =>
      correctedCount({ periods: [{ ages: [0], reports: 1 }], delay, fewestTogether: 1, level: 0.95, ...change });
    expect(call({ periods: [] })).toThrow(/periods must not be empty/);
    expect(call({ periods: [{ ages: [], reports: 1 }] })).toThrow(/periods\[0\]\.ages/);
    expect(call({ periods: [{ ages: [-1], reports: 1 }] })).toThrow(/periods\[0\]\.ages/);
    expect(call({ periods: [{ ages: [1], reports: 0.5 }] })).toThrow(/periods\[0\]\.reports/);
    expect(call({ level: 1 })).toThrow(/level/);
  });
});

describe("share within some days", () => {
  // By hand: logit 0 with standard error 0.05 / 0.25 = 0.2; 1.959964 × 0.2 = 0.391993, expit of it 0.596762.
  test("has limits on the logit scale", () => {
    const delay: EstimatedDelay = {
      kind: "estimated",
      steps: [
        { delay: 0, within: 0, standardError: 0 },
        { delay: 1, within: 0.5, standardError: 0.05 },
        { delay: 2, within: 1, standardError: 0 },
      ],
    };
    const { share, low, high } = shareWithin(delay, 1, 0.95);
    expect(share).toBe(0.5);
    expect(low).toBeCloseTo(0.403238, 6);
    expect(high).toBeCloseTo(0.596762, 6);
    expect(shareWithin(delay, 0, 0.95)).toMatchObject({ share: 0, low: 0, high: 0 });
    expect(shareWithin(delay, 9, 0.95)).toMatchObject({ share: 1, low: 1, high: 1 });
    expect(() => shareWithin(delay, 0.5, 0.95)).toThrow(/days/);
  });
});

interface Quarter {
  readonly asOf: number;
  readonly time: number;
  readonly onRecord: number;
  readonly corrected: number;
}

const fromR: readonly Quarter[] = readFileSync(
  fileURLToPath(new URL("../reference/reporting-delay-from-r.csv", import.meta.url)),
  "utf8",
)
  .trim()
  .split("\n")
  .slice(2)
  .map((line) => {
    const [asOf = 0, time = 0, onRecord = 0, corrected = 0] = line.split(",").map(Number);
    return { asOf, time, onRecord, corrected };
  });

/** Diagnoses by quarter and step of delay, as they were known at the end of a quarter. */
function asKnownAt(asOf: number): DelayCount[] {
  const steps = [...new Set(referenceRows("aids_reporting_delay").map(({ delay }) => Number(delay)))].sort(
    (a, b) => a - b,
  );
  return referenceRows("aids_reporting_delay").flatMap(({ time, delay, y }) => {
    const step = steps.indexOf(Number(delay));
    const longestSeen = Math.min(asOf - Number(time), steps.length - 1);
    return step > longestSeen ? [] : [{ delay: step, longestSeen, count: Number(y) }];
  });
}

// UK AIDS diagnoses by quarter and delay (Davison & Hinkley 1997), each quarter by itself; R 4.2.2, glm (poisson) on
// quarter and delay, tests/reference/reporting-delay.R. As of the end, and as of 6 and 12 quarters before.
test.each([38, 32, 26])("every quarter as known at quarter %i agrees with R's log-linear model", (asOf) => {
  const delay = estimated(asKnownAt(asOf));
  const quarters = fromR.filter((quarter) => quarter.asOf === asOf);
  expect(quarters).toHaveLength(asOf);
  for (const { time, onRecord, corrected: expected } of quarters) {
    const periods = [{ ages: [asOf - time], reports: onRecord }];
    expectClose(corrected({ periods, delay, fewestTogether: 0, level: 0.95 }).corrected, expected, 1e-9);
  }
});

// The same data as a trial: what was said 12 quarters before the end, against what those quarters had come to by the end.
// The numbers on record fell short by 12 to 45 %.
test("what was to come is foreseen far better than the numbers on record tell", () => {
  const delay = estimated(asKnownAt(26));
  const later = new Map<number, number>();
  for (const { time, y } of referenceRows("aids_reporting_delay").filter(({ dud }) => dud === "0"))
    later.set(Number(time), (later.get(Number(time)) ?? 0) + Number(y));
  const misses = [21, 22, 23, 24, 25].map((time) => {
    const onRecord = fromR.find((quarter) => quarter.asOf === 26 && quarter.time === time)?.onRecord ?? Number.NaN;
    const { corrected: said } = corrected({
      periods: [{ ages: [26 - time], reports: onRecord }],
      delay,
      fewestTogether: 0,
      level: 0.95,
    });
    const came = later.get(time) ?? Number.NaN;
    return { said: Math.abs(said / came - 1), onRecord: Math.abs(onRecord / came - 1) };
  });
  for (const { said, onRecord } of misses) expect(said).toBeLessThan(onRecord / 2);
});
