import { expect, test } from "vitest";
import { restoreTrialDue } from "@/app/_health/restore-trial-due";
import type { RestoreDrill } from "@/db/queries/restore-drills";

const timeZone = "America/Chicago"; // five hours behind UTC on these days
const drill = (finishedAt: string, problem: string | null = null): RestoreDrill => ({
  backupAt: finishedAt,
  finishedAt,
  rows: 1,
  problem,
});
const due = (now: string, last?: RestoreDrill, lastGood: RestoreDrill | "none" | undefined = last) =>
  restoreTrialDue({
    now: new Date(now),
    timeZone,
    drills: { last, lastGood: lastGood === "none" ? undefined : lastGood },
  });
const monday = drill("2026-10-05T08:00:00Z"); // three in the morning

test("where none was ever made it is due at once", () => {
  expect(due("2026-10-05T17:00:00Z")).toBe(true);
});

test.each([
  ["the sixth night after is too soon", "2026-10-11T08:00:00Z", false],
  ["the seventh is the one", "2026-10-12T08:00:00Z", true],
  ["not before one o'clock", "2026-10-12T05:50:00Z", false],
  ["at one", "2026-10-12T06:00:00Z", true],
  ["at a quarter to five", "2026-10-12T09:45:00Z", true],
  ["not by day", "2026-10-12T15:00:00Z", false],
  ["but by day where the night was missed", "2026-10-12T20:01:00Z", true],
])("%s", (_, now, expected) => expect(due(now, monday)).toBe(expected));

test("one that failed is made again a day later, and not every few minutes", () => {
  const failed = drill("2026-10-12T08:00:00Z", "2 rows are missing");
  expect(due("2026-10-12T08:10:00Z", failed, monday)).toBe(false);
  expect(due("2026-10-13T07:00:00Z", failed, monday)).toBe(true);
  expect(due("2026-10-13T07:00:00Z", failed, "none")).toBe(true);
});

test("of a clock that was put back, trials of days to come say nothing; of one that was a little wrong they do", () => {
  expect(due("2026-10-03T17:00:00Z", monday)).toBe(true);
  expect(due("2026-10-05T05:00:00Z", monday)).toBe(false);
});

test("whatever the hour at which it came back, the next comes before the eighth day", () => {
  for (const hour of [0, 5, 6, 9, 10, 17, 23]) {
    const finished = new Date(Date.UTC(2026, 9, 5, hour));
    const last = drill(finished.toISOString());
    const hours = Array.from({ length: 8 * 24 }, (_, n) => new Date(finished.getTime() + n * 3_600_000));
    expect(hours.some((now) => due(now.toISOString(), last))).toBe(true);
  }
});
