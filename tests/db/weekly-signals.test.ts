import { type SQL, sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { workOutByQuarter } from "@/app/repeats/signals/work-out-by-quarter";
import { readOnly } from "@/db/client";
import { inTransaction } from "@/db/in-transaction";
import { loadSignalRecord } from "@/db/queries/signal-record";
import { editJob } from "@/db/writes/edit-job";
import { refreshCounts } from "@/db/writes/refresh-counts";
import { takeBack } from "@/db/writes/take-back";
import { addDays, type Day, day } from "@/lib/calendar/day";
import { signalRun } from "@/lib/signals/signal-run";
import { randomOf } from "@/synthetic-data/random";
import { batchOf, csv, fileFolder, job, type Row, shopDocument, startAfresh, today, unit } from "./intake-files";

// Two makers' washers from files, brought up to date week by week. One maker's begin to lose their pumps in 2024. What is
// kept of a quarter must give what the whole record gives, and must be thrown away by whatever changes what it rests on.

const files = fileFolder();
/** The last quarter begins on Monday, 28 April 2025: weeks since Monday, 27 January are not settled in it. */
const [quarter, settledUntil] = [day("2025-04-28"), day("2025-01-27")];
const whole = day("2025-04-20");

function washers(): { units: Row[]; jobs: Row[] } {
  const random = randomOf(9, 1);
  const units: Row[] = [];
  const jobs: Row[] = [];
  for (let i = 0; i < 700; i++) {
    const own = i % 3 === 0;
    const installed = addDays(day("2020-06-01"), Math.floor((i * 1700) / 700));
    const serial = `${own ? "H" : "T"}${String(i).padStart(4, "0")}`;
    const more = own ? {} : { maker: "Tarn & Vale", model: i % 3 === 1 ? "TV90" : "TV95" };
    units.push(unit(serial, { ...more, made: addDays(installed, -40), installed_on: installed }));
    for (let on = installed; on < today; on = addDays(on, 1)) {
      if (random.share() >= (own && on >= "2024-09-01" ? 0.9 : 0.12) / 365) continue;
      const closed = addDays(on, Math.floor(12 * random.share()));
      jobs.push(job(`J-${jobs.length + 1}`, serial, { ...more, requested_on: on, completed_on: closed }));
    }
  }
  return { units, jobs };
}

const { units, jobs } = washers();
const closedBetween = (from: Day, to: Day) =>
  jobs.filter(({ completed_on }) => String(completed_on) > from && String(completed_on) <= to);

/** Works the week out by what was kept, and holds the run against that of the whole record. */
async function workOut(on: Day): Promise<string> {
  const worked = await workOutByQuarter({ on, timeZone: "UTC" });
  const loaded = await readOnly((db) => loadSignalRecord(db, { on, timeZone: "UTC" }));
  if (loaded.kind !== "record") throw new Error(loaded.kind);
  expect(worked.run).toEqual(signalRun(loaded.record));
  return worked.kind;
}

beforeAll(async () => {
  process.env.OHMSWORTH_TODAY = today;
  await startAfresh();
  batchOf(await files.load(JSON.stringify({ ...shopDocument, recordsFrom: "2020-06-01" }), "add", "shop.json"));
  batchOf(await files.load(csv(units)));
  batchOf(await files.load(csv(closedBetween(day("2020-01-01"), whole))));
}, 120_000);
afterAll(() => files.remove());

test("the first run of a quarter reads all, those after it only what came since", { timeout: 60_000 }, async () => {
  expect(await workOut(whole)).toBe("worked out");
  expect(await workOut(whole)).toBe("brought up to date");
  let [before, weekly] = [whole, 0];
  for (let on = addDays(whole, 7); on < "2025-06-29"; on = addDays(on, 7)) {
    const closed = closedBetween(before, on);
    if (closed.length > 0) batchOf(await files.load(csv(closed)));
    before = on;
    if ((await workOut(on)) === "brought up to date") weekly += 1;
  }
  expect(weekly).toBeGreaterThan(6);
  const { run } = await workOutByQuarter({ on: before, timeZone: "UTC" });
  expect(run?.kind === "followed" && run.signals.length).toBeGreaterThan(0);
});

const last = day("2025-06-22");
const settle = async () => {
  await workOutByQuarter({ on: last, timeZone: "UTC" });
  expect(await workOut(last)).toBe("brought up to date");
};
const bySql = (statement: SQL) => async () => {
  await inTransaction(async (tx) => {
    const rows = await tx.rows(statement);
    if (rows.length === 0) throw new Error("nothing was changed");
    await refreshCounts(tx, "all");
  });
};
const edit = (jobNumber: string, column: "component" | "completed_on", value: string) => async () => {
  const { kind } = await editJob({ jobNumber, column, value, by: "Kim", reason: "misread" });
  expect(kind).toBe("edited");
};
const oldOnes = closedBetween(day("2023-01-01"), day("2023-12-01")).filter(({ maker }) => maker === "Hearth-Wick");
const oldJob = String(oldOnes.find(({ serial }) => serial !== "H0003")?.job_number);
const newJob = String(closedBetween(quarter, last)[4]?.job_number);

test.each<[string, () => Promise<unknown>]>([
  ["a component of an old job is edited", edit(oldJob, "component", "door_lock")],
  ["an old job was closed on another day", edit(oldJob, "completed_on", "2024-02-02")],
  [
    "a fault code is added to an old job",
    bySql(sql`
      insert into readings (unit_id, job_id, number, check_key, mode, outcome, word, power)
      select unit_id, job_id, 900, 'fault_code', 'fault_code', 'code', 'E21', 'powered_panels_closed' from jobs where job_number = ${oldJob} returning number`),
  ],
  [
    "a machine was made in another half-year",
    bySql(
      sql`update units set made_from = date '2021-01-10', made_until = date '2021-01-10' where serial = 'H0300' returning serial`,
    ),
  ],
  [
    "two machines of one model change places, so that there are as many of each day as before",
    bySql(sql`
      update units u set installed_on = o.installed_on, made_from = o.made_from, made_until = o.made_until from units o
      where (u.serial, o.serial) in (values (${serialOf(oldJob)}, 'H0003'), ('H0003', ${serialOf(oldJob)})) returning u.serial`),
  ],
  [
    "a machine was given up long ago",
    bySql(sql`update units set retired_on = '2024-05-05' where serial = 'H0306' returning serial`),
  ],
  [
    "an old machine comes into the register",
    async () => batchOf(await files.load(csv([unit("OLD1", { made: "2023-01-10", installed_on: "2023-02-01" })]))),
  ],
  [
    "an old job comes late",
    async () =>
      batchOf(
        await files.load(csv([job("LATE", "H0003", { requested_on: "2024-01-05", completed_on: "2024-01-09" })])),
      ),
  ],
  ["a load is taken back", async () => expect((await takeBack(await loadOf("LATE"))).kind).toBe("taken back")],
  [
    "a model has another number",
    bySql(sql`update models set number = 'TV96', normalised = 'TV96' where number = 'TV95' returning number`),
  ],
  ["records begin on another day", bySql(sql`update shop set records_from = '2020-08-01' returning name`)],
])("all is worked out anew where %s", { timeout: 60_000 }, async (_, change) => {
  await settle();
  await change();
  expect(await workOut(last)).toBe("worked out");
});

test.each<[string, () => Promise<unknown>]>([
  ["a new job is edited", edit(newJob, "component", "door_lock")],
  [
    "a machine was given up since",
    bySql(sql`update units set retired_on = '2025-02-05' where serial = 'H0309' returning serial`),
  ],
  [
    "a new machine comes",
    async () => batchOf(await files.load(csv([unit("NEW1", { made: "2025-01-02", installed_on: settledUntil })]))),
  ],
  [
    "an old call is closed when its quarter is settled",
    async () =>
      batchOf(
        await files.load(csv([job("SLOW", "H0003", { requested_on: "2024-11-05", completed_on: "2025-05-09" })])),
      ),
  ],
  ["a new job is taken back", async () => takeBack(await loadOf("SLOW"))],
])("what is settled holds where %s", { timeout: 60_000 }, async (_, change) => {
  await settle();
  await change();
  expect(await workOut(last)).toBe("brought up to date");
});

function serialOf(jobNumber: string): string {
  return String(jobs.find(({ job_number }) => job_number === jobNumber)?.serial);
}

async function loadOf(jobNumber: string): Promise<number> {
  const [found] = await readOnly((db) =>
    db.rows<{ batch: number }>(sql`select batch_id::int as batch from jobs where job_number = ${jobNumber}`),
  );
  return found?.batch ?? -1;
}
