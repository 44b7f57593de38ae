import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { loadDelayRecord } from "@/db/queries/reporting-delay";
import { loadOpenings } from "@/db/queries/reporting-delay-openings";
import { takeBack } from "@/db/writes/take-back";
import { day } from "@/lib/calendar/day";
import { dayNumber } from "@/lib/calendar/day-number";
import type { RateFilter } from "@/lib/failures/rate-question";
import { batchOf, csv, fileFolder, job, shopDocument, startAfresh, today, unit } from "./intake-files";

const files = fileFolder();
const timeZone = shopDocument.timeZone;
const number = (text: string) => dayNumber(day(text));

beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1"), unit("A2")]));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const record = (until = today) => readOnly((db) => loadDelayRecord(db, { today: until, timeZone }));

/** Loads jobs as if at that instant. */
async function loadAt(addedAt: string, rows: Parameters<typeof csv>[0]): Promise<number> {
  const batchId = batchOf(await files.load(csv(rows)));
  await inTransaction(async (tx) => {
    await tx.execute(sql`update batches set added_at = ${addedAt} where batch_id = ${batchId}`);
  });
  return batchId;
}

const closed = (name: string, requested: string, completed: string, more = {}) =>
  job(name, "A1", { requested_on: requested, completed_on: completed, ...more });

test("a job's load falls on the shop's day, and the first load's history has none", async () => {
  // Half past ten in the evening of 4 March in Los Angeles is 5 March in UTC.
  await loadAt("2025-03-05 06:30:00+00", [
    closed("H1", "2024-06-01", "2024-06-04"),
    closed("H2", "2025-03-01", "2025-03-04"),
    closed("H3", "", "2025-03-03"),
  ]);
  await loadAt("2025-03-11 17:00:00+00", [closed("W1", "2025-03-02", "2025-03-07")]);
  const { lastClosedOn, opened, withoutOpening, loads } = await record();
  expect(lastClosedOn).toBe(number("2025-03-07"));
  expect(loads).toEqual({ firstOn: number("2025-03-04"), lastOn: number("2025-03-11"), days: 2 });
  expect(withoutOpening).toBe(1);
  const byOpening = opened
    .toSorted((a, b) => a.openedOn - b.openedOn)
    .map(({ openedOn, loadedOn }) => [openedOn, loadedOn]);
  expect(byOpening).toEqual([
    [number("2024-06-01"), undefined],
    [number("2025-03-01"), number("2025-03-04")],
    [number("2025-03-02"), number("2025-03-11")],
  ]);
});

test("jobs that a later file names again keep the day of their first load; a load taken back is none", async () => {
  const first = [closed("H1", "2025-03-01", "2025-03-04")];
  await loadAt("2025-03-04 17:00:00+00", first);
  const second = await loadAt("2025-03-11 17:00:00+00", [...first, closed("W1", "2025-03-02", "2025-03-07")]);
  const { opened, loads } = await record();
  expect(opened.map(({ loadedOn }) => loadedOn).sort()).toEqual([number("2025-03-04"), number("2025-03-11")]);
  expect(loads?.days).toBe(2);
  expect((await takeBack(second)).kind).toBe("taken back");
  expect((await record()).loads).toMatchObject({ days: 1, lastOn: number("2025-03-04") });
});

test("void jobs and days after today are not believed; without jobs there is no record", async () => {
  expect(await record()).toEqual({ lastClosedOn: undefined, opened: [], withoutOpening: 0, loads: undefined });
  batchOf(
    await files.load(
      csv(
        [
          closed("J1", "2025-03-01", "2025-03-04"),
          closed("J2", "2025-03-01", "2025-03-20"),
          closed("V1", "2025-03-01", "2025-03-02", { status: "void" }),
        ],
        [...Object.keys(closed("", "", "")), "status"],
      ),
    ),
  );
  const early = await record(day("2025-03-10"));
  expect(early.lastClosedOn).toBe(number("2025-03-04"));
  expect(early.opened).toMatchObject([{ openedOn: number("2025-03-01"), closedOn: number("2025-03-04"), jobs: 1 }]);
});

test("openings are the jobs that a rate would count, narrowed as the rate is", async () => {
  batchOf(
    await files.load(
      csv([
        closed("J1", "2025-03-01", "2025-03-04"),
        closed("J2", "2025-03-01", "2025-03-05", { component: "door_lock", symptom: "door_stays_locked" }),
        closed("J3", "2025-03-02", "2025-03-05", { cause: "foreign_object" }),
        job("J4", "NOT-IN-REGISTER", { requested_on: "2025-03-02", completed_on: "2025-03-03" }),
        closed("J5", "2025-02-01", "2025-02-03"),
      ]),
    ),
  );
  const ask = async (where: RateFilter, counting: "failures" | "calls" | "foreign_object") =>
    Object.fromEntries(await readOnly((db) => loadOpenings(db, { where, counting, since: number("2025-02-20") })));
  const [first, second] = [number("2025-03-01"), number("2025-03-02")];
  expect(await ask({}, "failures")).toEqual({ [first]: 2 });
  expect(await ask({}, "calls")).toEqual({ [first]: 2, [second]: 1 });
  expect(await ask({}, "foreign_object")).toEqual({ [second]: 1 });
  expect(await ask({ component: "drain_pump", model: "FW5500" }, "failures")).toEqual({ [first]: 1 });
  expect(await ask({ symptom: "will_not_drain", maker: "Hearth-Wick" }, "failures")).toEqual({ [first]: 1 });
  expect(await ask({ productType: "dishwasher" }, "failures")).toEqual({});
  // Installed on 1 March 2022: three years old that day, so neither in the third year nor over 8.
  expect(await ask({ age: "36-60" }, "failures")).toEqual({ [first]: 2 });
  expect(await ask({ age: "96-" }, "failures")).toEqual({});
});
