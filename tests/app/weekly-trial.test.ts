// The starter's waiting for the next trial of a backup, over months that pass at once: the clock, the waiting and the trials
// are given to it; when one is due is asked of the same rule as at work.
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { restoreTrialDue } from "@/app/_health/restore-trial-due";
import { tryBackupsWeekly } from "@/app/commands/start/weekly-trial.mjs";
import type { RestoreDrill } from "@/db/queries/restore-drills";
import { instantOnClock } from "@/lib/calendar/instant";

const timeZone = "America/Chicago"; // whose clocks change on 1 November 2026 and on 14 March 2027
const hourMs = 3_600_000;
const dayMs = 24 * hourMs;

let said: string[];
beforeEach(() => {
  said = [];
  vi.spyOn(console, "log").mockImplementation((line: string) => void said.push(line));
});
afterEach(() => {
  vi.restoreAllMocks();
});

interface Trial {
  /** Days of waiting since the start, whatever clocks say. */
  readonly day: number;
  /** On the company's clock. */
  readonly hour: number;
}

interface Story {
  readonly days: number;
  /** By how much the machine's clock is wrong after so many days. */
  readonly wrongBy?: (day: number) => number;
  /** What a trial comes to: kept with its problem, or undone before anything could be kept. */
  readonly outcome?: (day: number) => "came back" | "did not come back" | "never began";
  /** When the backup was made that is newest; else a day before its trial. */
  readonly madeAt?: string;
  readonly answers?: (day: number) => boolean;
}

/** Runs the starter's waiting for so many days. */
async function run({ days, wrongBy = () => 0, outcome = () => "came back", madeAt, answers = () => true }: Story) {
  const start = Date.parse("2026-10-05T15:00:00Z");
  let waited = 0;
  const day = () => waited / dayMs;
  const clock = () => new Date(start + waited + wrongBy(day()));
  const drills: RestoreDrill[] = [];
  const trials: Trial[] = [];
  const database = {
    url: "postgres://nowhere",
    isTrialDue: async (now: Date) => {
      if (!answers(day())) throw new Error("the database does not answer");
      return restoreTrialDue({
        now,
        timeZone,
        drills: { last: drills.at(-1), lastGood: drills.findLast(({ problem }) => problem === null) },
      });
    },
  };
  await tryBackupsWeekly(
    { folder: "/backups", database, signal: new AbortController().signal },
    {
      now: clock,
      wait: async (ms: number) => {
        waited += ms;
        return waited < days * dayMs;
      },
      makeTrial: async () => {
        const now = clock();
        trials.push({ day: day(), hour: Number(instantOnClock(now.toISOString(), timeZone).slice(11, 13)) });
        const came = outcome(day());
        if (came === "never began") throw new Error("it holds no finished backup");
        const backupAt = madeAt ?? new Date(now.getTime() - dayMs).toISOString();
        // As the command keeps it: never finished before the backup was made.
        const finishedAt = [backupAt, now.toISOString()].toSorted().at(-1) ?? "";
        drills.push({ backupAt, finishedAt, rows: 1, problem: came === "came back" ? null : "2 rows are missing" });
        if (came !== "came back") throw new Error("2 rows are missing");
      },
    },
  );
  return trials;
}

/** Hours of waiting from each trial to the next. */
const gaps = (trials: readonly Trial[]) =>
  trials.slice(1).map(({ day }, index) => Math.round((day - (trials[index]?.day ?? 0)) * 24 * 6) / 6);
const week = 7 * 24;

test("at once where there was none, then every week by night, over both changes of the clocks", async () => {
  const trials = await run({ days: 175 });
  expect(trials[0]?.day).toBeLessThan(0.02);
  const [first, ...weekly] = gaps(trials);
  expect(first).toBeGreaterThan(6.5 * 24); // it was made by day, and is followed by the first night after six and a half
  expect(first).toBeLessThan(week);
  expect(weekly.length).toBe(24);
  for (const gap of weekly) expect(Math.abs(gap - week)).toBeLessThan(12);
  for (const { hour } of trials.slice(1)) expect([1, 2, 3, 4]).toContain(hour);
  expect(said).toEqual([]);
});

test("one that did not come back is told, made again a day later, and the weeks go on", async () => {
  const trials = await run({ days: 40, outcome: (day) => (day > 6 && day < 8 ? "did not come back" : "came back") });
  const told = "ohmsworth: the newest backup was not restored on trial: 2 rows are missing";
  expect(said).toEqual([told, told]);
  const [first, again, good, weekly] = gaps(trials);
  expect(first).toBeLessThan(week);
  for (const gap of [again, good]) expect(Math.abs((gap ?? 0) - 21)).toBeLessThan(2);
  expect(weekly).toBeGreaterThan(6.5 * 24);
  expect(weekly).toBeLessThan(week + 12);
});

test("one that leaves no record, as in a folder without a backup, is tried every hour and not every ten minutes", async () => {
  const trials = await run({ days: 10, outcome: (day) => (day < 1 ? "never began" : "came back") });
  const inVain = trials.filter(({ day }) => day < 1);
  expect(inVain.length).toBe(24);
  expect(new Set(gaps(inVain))).toEqual(new Set([1]));
  expect(said.length).toBe(24);
  expect(trials.length).toBe(24 + 2);
});

test("a clock that is a year ahead for a day costs one trial there and one when it is put back; then weeks go on", async () => {
  const trials = await run({ days: 60, wrongBy: (day) => (day > 10 && day < 11 ? 365 * dayMs : 0) });
  expect(trials.filter(({ day }) => day > 10 && day < 12).length).toBe(2);
  expect(Math.min(...gaps(trials))).toBeGreaterThanOrEqual(20);
  for (const gap of gaps(trials.filter(({ day }) => day > 12))) expect(Math.abs(gap - week)).toBeLessThan(12);
});

test("a clock that is put back a year for good ends no weeks", async () => {
  const trials = await run({ days: 60, wrongBy: (day) => (day > 10 ? -365 * dayMs : 0) });
  expect(trials.filter(({ day }) => day > 10).length).toBeGreaterThanOrEqual(7);
  expect(Math.min(...gaps(trials))).toBeGreaterThanOrEqual(20);
  expect(Math.max(...gaps(trials))).toBeLessThan(8 * 24);
});

test("a backup dated a year ahead is tried once a day at most, not every ten minutes", async () => {
  const trials = await run({ days: 30, madeAt: "2027-10-05T00:00:00.000Z" });
  expect(trials.length).toBeGreaterThan(20);
  expect(Math.min(...gaps(trials))).toBeGreaterThanOrEqual(20);
});

test("a database that does not answer for a week is asked on, and its trial is made when it does", async () => {
  const trials = await run({ days: 20, answers: (day) => day < 1 || day > 9 });
  expect(trials.length).toBe(3);
  expect(trials[1]?.day).toBeCloseTo(9, 1);
  expect(said[0]).toBe("ohmsworth: the newest backup was not restored on trial: the database does not answer");
});

test("with no folder named nothing is waited for; asked to stop, the machine's own waiting ends at once", async () => {
  const database = { url: "postgres://nowhere", isTrialDue: async () => Promise.reject(new Error("asked")) };
  const stop = new AbortController();
  await tryBackupsWeekly({ folder: "", database, signal: stop.signal });
  const waiting = tryBackupsWeekly({ folder: "/backups", database, signal: stop.signal });
  stop.abort();
  await waiting;
  expect(said).toEqual([]);
});
