import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadDelayRecord } from "@/db/queries/reporting-delay";
import { loadFile } from "@/db/writes/load-file";
import { addDays, type Day, day } from "@/lib/calendar/day";
import { type DelayRecord, type ReportingDelays, reportingDelays } from "@/lib/failures/reporting-delay";
import { type RecentCorrection, recentCorrection } from "@/lib/failures/reporting-delay-correction";
import { scenarioOf } from "@/synthetic-data/scenario";
import type { Truth } from "@/synthetic-data/truth";
import { writeDemo } from "@/synthetic-data/write-demo";
import { startAfresh } from "./intake-files";

// The demo company's delays come back from the database as the law that they were drawn from, and what was foreseen at
// past days is held against what had come of it by the end.

const until = day("2026-10-31");
const folder = mkdtempSync(join(tmpdir(), "ohmsworth-delay-"));
let truth: Truth;

beforeAll(async () => {
  await startAfresh();
  truth = await writeDemo(scenarioOf({ seed: 3, size: 0.25, until }), folder);
  for (const name of ["shop.json", "units.csv", "jobs.csv"]) {
    const file = { path: join(folder, name), fileName: name };
    expect((await loadFile({ ...file, mode: "add and set aside", today: until })).kind).toBe("added");
  }
}, 300_000);
afterAll(async () => {
  rmSync(folder, { recursive: true, force: true });
  await closeDatabase();
});

const recordAt = (today: Day) => readOnly((db) => loadDelayRecord(db, { today, timeZone: "UTC" }));

function delaysOf(record: DelayRecord): ReportingDelays {
  const delays = reportingDelays(record);
  if (delays === undefined) throw new Error("the demo has jobs");
  return delays;
}

test("the learnt delays are those of the company, within 4 standard errors", async () => {
  const { openedToClosed } = delaysOf(await recordAt(until));
  if (openedToClosed.kind !== "learnt") throw new Error("the demo has jobs enough");
  for (const days of [0, 2, 4, 7, 10, 14, 21, 28]) {
    const step = openedToClosed.delay.steps[days];
    if (step === undefined) throw new Error(`no delay of ${days} days`);
    const apart = Math.abs(step.within - (truth.closedWithin[days] ?? 1));
    expect(apart, `${step.within} within ${days} days`).toBeLessThan(4 * step.standardError);
  }
});

test("what was foreseen at the end of each of 22 four-week spans holds what came of it", async () => {
  const final = await plainOpenings();
  const outcomes: { count: Extract<RecentCorrection, { kind: "corrected" }>["count"]; came: number }[] = [];
  for (let back = 60; outcomes.length < 22; back += 28) {
    const record = await recordAt(addDays(until, -back));
    const delays = delaysOf(record);
    const question = { from: undefined, until: delays.lastClosedOn + 1, opened: openedIn(record), level: 0.95 };
    const said = recentCorrection(delays, question);
    if (said.kind !== "corrected") throw new Error(`said ${said.kind}`);
    const first = delays.lastClosedOn - 7 * said.weeks + 1;
    const came = final.filter(({ on }) => on >= first && on <= delays.lastClosedOn);
    outcomes.push({ count: said.count, came: came.reduce((sum, { jobs }) => sum + jobs, 0) });
  }
  const held = outcomes.filter(({ count, came }) => came >= count.lo && came <= count.hi);
  // 22 ranges at 95 in 100: fewer than 18 that hold would come about once in 200 times. They overlap by a week.
  expect(held.length, JSON.stringify(outcomes)).toBeGreaterThanOrEqual(18);
  const sum = (pick: (one: (typeof outcomes)[number]) => number) => outcomes.reduce((all, one) => all + pick(one), 0);
  expect(sum(({ count }) => count.events) / sum(({ came }) => came)).toBeLessThan(0.85);
  expect(Math.abs(sum(({ count }) => count.corrected) / sum(({ came }) => came) - 1)).toBeLessThan(0.04);
});

/** All closed jobs by the day of the call, straight from their rows. */
async function plainOpenings() {
  return await readOnly((db) =>
    db.rows<{ on: number; jobs: number }>(sql`
      select requested_on - date '1970-01-01' as on, count(*)::int as jobs from jobs
      where status = 'closed' and requested_on is not null group by 1`),
  );
}

/** Jobs by the day on which they were opened. */
function openedIn({ opened }: DelayRecord): Map<number, number> {
  const byDay = new Map<number, number>();
  for (const { openedOn, jobs } of opened) byDay.set(openedOn, (byDay.get(openedOn) ?? 0) + jobs);
  return byDay;
}
