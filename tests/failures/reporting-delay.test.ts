import { describe, expect, test } from "vitest";
import { type DelayRecord, type OpenedJobs, reportingDelays } from "@/lib/failures/reporting-delay";
import { daysUntilShare, recentCorrection, recentWeeks } from "@/lib/failures/reporting-delay-correction";
import { recentWeekCounts } from "@/lib/failures/reporting-delay-weeks";

// A made company: four jobs are opened on each of 100 days; one is closed the same day, two after 4 days, one after 10.
// Nothing is known after day 99.
const lastClosedOn = 99;
const waits = [0, 4, 4, 10];

function opened(loadedOn: (closedOn: number) => number | undefined = () => undefined): OpenedJobs[] {
  return Array.from({ length: 100 }, (_, openedOn) =>
    waits
      .map((wait) => openedOn + wait)
      .filter((closedOn) => closedOn <= lastClosedOn)
      .map((closedOn) => ({ openedOn, closedOn, loadedOn: loadedOn(closedOn), jobs: 1 })),
  ).flat();
}

const record: DelayRecord = { lastClosedOn, opened: opened(), withoutOpening: 3, loads: undefined };

function learnt(input: DelayRecord = record) {
  const delays = reportingDelays(input);
  if (delays?.openedToClosed.kind !== "learnt") throw new Error("400 jobs are enough");
  return { delays, delay: delays.openedToClosed.delay };
}

describe("from opening to closing", () => {
  // By hand: the shares are those of the four waits, although the last ten days hold quick jobs only.
  test("the youngest jobs do not make it look quicker than it is", () => {
    const { delay } = learnt();
    expect([0, 3, 4, 9, 10].map((day) => delay.steps[day]?.within)).toEqual([0.25, 0.25, 0.75, 0.75, 1]);
    const plain = record.opened.filter(({ openedOn, closedOn }) => closedOn - openedOn <= 4).length;
    expect(plain / record.opened.length).toBeGreaterThan(0.75);
    expect([0.25, 0.5, 0.99].map((share) => daysUntilShare(delay, share))).toEqual([0, 4, 10]);
    expect(recentWeeks(delay)).toBe(2);
  });

  test("of few jobs nothing is learnt, and of none nothing is said", () => {
    const few = reportingDelays({ ...record, opened: record.opened.slice(0, 29) });
    expect(few?.openedToClosed).toEqual({ kind: "too-few-jobs", jobs: 29 });
    expect(reportingDelays({ ...record, opened: record.opened.slice(0, 30) })?.openedToClosed.kind).toBe("learnt");
    expect(reportingDelays({ ...record, lastClosedOn: undefined, opened: [] })).toBeUndefined();
  });
});

describe("from closing to loading", () => {
  const weekly = (closedOn: number) => (closedOn < 50 ? undefined : 7 * Math.ceil(closedOn / 7));
  const loads = { firstOn: 49, lastOn: 105, days: 9 };

  test("the history of the first load is no delay", () => {
    const regular = reportingDelays({ ...record, opened: opened(weekly), loads });
    if (regular?.closedToLoaded.kind !== "learnt") throw new Error("nine loads are enough");
    const { jobs, delay } = regular.closedToLoaded;
    expect(jobs).toBe(record.opened.filter(({ closedOn }) => closedOn >= 50).length);
    // Weekly loads bring every job within 6 days; a seventh of the days is a day of loading itself.
    expect(delay.steps[6]?.within).toBe(1);
    expect(delay.steps[0]?.within).toBeCloseTo(1 / 7, 1);
  });

  test("one load of ten years, or few since, cannot tell, and says what there is", () => {
    const one = { firstOn: 120, lastOn: 120, days: 1 };
    expect(reportingDelays({ ...record, loads: one })?.closedToLoaded).toEqual({
      kind: "not-enough-regular-loads",
      jobs: 0,
      loads: one,
    });
    const four = reportingDelays({ ...record, opened: opened(weekly), loads: { ...loads, days: 4 } });
    expect(four?.closedToLoaded.kind).toBe("not-enough-regular-loads");
    expect(reportingDelays(record)?.closedToLoaded).toMatchObject({ jobs: 0, loads: undefined });
  });
});

describe("the last weeks", () => {
  const byDay = new Map<number, number>();
  for (const { openedOn, jobs } of record.opened) byDay.set(openedOn, (byDay.get(openedOn) ?? 0) + jobs);
  const ask = (from: number | undefined, until: number) =>
    recentCorrection(learnt().delays, { from, until, opened: byDay, level: 0.95 });

  // By hand: of the last week (4 days at 0.25, 3 at 0.75) 13 of 28 jobs are closed, of the week before 25 of 28.
  test("come to what was opened in them", () => {
    const result = ask(undefined, 100);
    if (result.kind !== "corrected") throw new Error(result.kind);
    expect(result.weeks).toBe(2);
    expect(result.count.events).toBe(13 + 25);
    expect(result.count.corrected).toBeCloseTo(56, 10);
    expect(result.count.lo).toBeLessThan(56);
    expect(result.count.hi).toBeGreaterThan(56);
  });

  test("are cut to the days asked about; older days are complete", () => {
    const cut = ask(95, 97);
    expect(cut).toMatchObject({ kind: "corrected", weeks: 1, count: { events: 4 } });
    if (cut.kind === "corrected") expect(cut.count.corrected).toBeCloseTo(8, 10); // days 3 and 4 ago: 1 + 3 of 8
    expect(ask(undefined, 86)).toEqual({ kind: "complete" });
    expect(ask(undefined, 87)).toMatchObject({ kind: "corrected", weeks: 1 });
  });

  test("stand one by one as well, each with its own range", () => {
    const { delay } = learnt();
    const weeks = recentWeekCounts(record, { delay, lastClosedOn, level: 0.95 });
    expect(weeks.map(({ firstOn, lastOn, count }) => [firstOn, lastOn, count.events])).toEqual([
      [93, 99, 13],
      [86, 92, 25],
    ]);
    // By hand: 13 × 7 / (4 × 0.25 + 3 × 0.75) and 25 × 7 / (3 × 0.75 + 4).
    const expected = weeks.map(({ count }) => (count.kind === "corrected" ? count.corrected : count.kind));
    expect(expected[0]).toBeCloseTo(28, 10);
    expect(expected[1]).toBeCloseTo(28, 10);
  });

  test("are not corrected by a delay that was not learnt", () => {
    const delays = reportingDelays({ ...record, opened: record.opened.slice(0, 5) });
    if (delays === undefined) throw new Error("there are jobs");
    expect(recentCorrection(delays, { from: undefined, until: 100, opened: byDay, level: 0.95 })).toEqual({
      kind: "not-learnt",
      jobs: 5,
    });
  });
});
