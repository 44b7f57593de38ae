import { sql } from "drizzle-orm";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type CurrentRun, currentRun, settleSignals } from "@/app/repeats/signals/current-run";
import { signalsFinding } from "@/app/repeats/signals/signals-finding";
import { stateOfSignal } from "@/app/repeats/signals/state-of-signal";
import { readOnly } from "@/db/client";
import { inTransaction } from "@/db/in-transaction";
import { loadSignalJobs } from "@/db/queries/signal-jobs";
import { loadUnitsAtRisk } from "@/db/queries/signal-machines";
import { loadProductionUnits } from "@/db/queries/signal-production";
import { loadSignalRecord } from "@/db/queries/signal-record";
import { loadNotesOfUnit } from "@/db/queries/technician-notes";
import { refreshCounts } from "@/db/writes/refresh-counts";
import { markSignal, undoMark } from "@/db/writes/signals/mark-signal";
import { storeRun } from "@/db/writes/signals/store-run";
import { liftTechnicianNote, writeTechnicianNote } from "@/db/writes/signals/technician-note";
import { addDays, type Day, day } from "@/lib/calendar/day";
import { exposureWeeks } from "@/lib/signals/exposure-weeks";
import { productionView } from "@/lib/signals/production-weeks";
import { randomOf } from "@/synthetic-data/random";
import { batchOf, csv, fileFolder, job, type Row, shopDocument, startAfresh, today, unit } from "./intake-files";

// Two makers' washers, from files. One maker's units made in four weeks of 2023 begin to lose their pumps in 2024.

const files = fileFolder();
/** Four whole weeks of production. */
const bad = { from: "2023-03-06", to: "2023-04-02" };
const key = "drain_pump~front_load_washer~Hearth-Wick";

function washers(): { units: Row[]; jobs: Row[] } {
  const random = randomOf(5, 1);
  const units: Row[] = [];
  const jobs: Row[] = [];
  for (let i = 0; i < 800; i++) {
    const own = i % 2 === 0;
    const installed = addDays(day("2020-06-01"), Math.floor((i * 1500) / 800));
    const made = addDays(installed, -40);
    const serial = `${own ? "H" : "T"}${made.replaceAll("-", "")}${String(i).padStart(4, "0")}`;
    const more = own ? {} : { maker: "Tarn & Vale", model: "TV90" };
    units.push(unit(serial, { ...more, made, installed_on: installed }));
    const isBad = own && made >= bad.from && made <= bad.to;
    const perDay = 0.06 / 365;
    for (let on = installed; on < today; on = addDays(on, 1)) {
      const rate = isBad && on >= "2024-06-01" ? 2.5 / 365 : perDay;
      if (random.share() >= rate) continue;
      jobs.push(job(`J-${jobs.length + 1}`, serial, { ...more, requested_on: on, completed_on: addDays(on, 4) }));
    }
  }
  return { units, jobs: jobs.filter(({ completed_on }) => String(completed_on) <= today) };
}

async function signalsOn(on?: Day): Promise<Extract<CurrentRun, { kind: "run" }>> {
  const current = await currentRun(on);
  if (current.kind !== "run") throw new Error(current.kind);
  return current;
}

beforeAll(async () => {
  process.env.OHMSWORTH_TODAY = today;
  await startAfresh();
  batchOf(await files.load(JSON.stringify({ ...shopDocument, recordsFrom: "2020-06-01" }), "add", "shop.json"));
  const { units, jobs } = washers();
  batchOf(await files.load(csv(units)));
  batchOf(await files.load(csv(jobs)));
}, 120_000);
afterAll(() => files.remove());

test("many who ask first, each at once, are all answered, and one run is kept", async () => {
  const told = await Promise.all(Array.from({ length: 12 }, () => signalsOn()));
  expect(new Set(told.map(({ run }) => run.asOf))).toEqual(new Set(["2025-06-22"]));
  const run = { kind: "too-short", weeks: 3, needed: 26 } as const;
  await Promise.all(["one", "another", "a third"].map((basis) => storeRun({ asOf: day("2024-01-07"), basis, run }))); // as several processes would
  const runs = await readOnly((db) =>
    db.rows<{ as_of: string }>(sql`select as_of::text as as_of from signal_runs order by 1`),
  );
  expect(runs).toEqual([{ as_of: "2024-01-07" }, { as_of: "2025-06-22" }]);
  await inTransaction((tx) => tx.execute(sql`delete from signal_runs where as_of = '2024-01-07'`));
});

test("unit-weeks and jobs of the record are those of the rows, counted one by one", async () => {
  const loaded = await readOnly((db) => loadSignalRecord(db, { on: today, timeZone: "UTC" }));
  if (loaded.kind !== "record") throw new Error(loaded.kind);
  const { record, asOf } = loaded;
  expect(asOf).toBe("2025-06-29");
  const { unitWeeks, starts } = exposureWeeks(record, { first: 0, count: 0, ahead: 0 }, record.cohorts);
  const counted = unitWeeks
    .slice(0, starts[record.lastWeek - record.firstWeek + 1])
    .reduce((sum, weeks) => sum + weeks, 0);
  const [plain] = await readOnly((db) =>
    db.rows<{ weeks: number; jobs: number }>(sql`
      select (select count(*)::int from units u cross join generate_series(date '1970-01-05' + ${7 * record.firstWeek}::int, ${asOf}::date, interval '7 days') w
          where u.in_service_on <= w + interval '6 days') as weeks,
        (select count(*)::int from jobs where completed_on <= ${asOf} and failed_on >= date '1970-01-05' + ${7 * record.firstWeek}::int) as jobs`),
  );
  expect(counted).toBe(plain?.weeks);
  expect(record.jobs.reduce((sum, { jobs }) => sum + jobs, 0)).toBe(plain?.jobs);
});

test("the bad lot is found, with its weeks of production and its serials; an earlier day does not know it yet", async () => {
  const { signals, run } = await signalsOn();
  const signal = signals.find((one) => one.key === key);
  expect(signals.map((one) => one.key)).toEqual([key]);
  if (signal === undefined) return;
  expect(signal.lead.key).toMatchObject({ maker: "Hearth-Wick", model: "FW5500" });
  expect(signal.observed).toBeGreaterThan(2 * signal.expected);
  const cell = signal.lead.key;
  await readOnly(async (db) => {
    const { serials } = productionView(await loadProductionUnits(db, cell, run.asOf), signal.lead.ages, 1);
    expect(serials?.from).toMatch(/^H202303(06|07|08|09|10|11|12)/);
    expect(serials?.to).toMatch(/^H2023(0327|0328|0329|0330|0331|0401|0402)/);
    const jobs = await loadSignalJobs(db, { cell, from: signal.onsetOn, asOf: run.asOf });
    expect(jobs.words).toEqual([
      { key: "will_not_drain", name: "Will not drain", jobs: jobs.jobs, elsewhere: jobs.elsewhere },
    ]);
    const atRisk = await loadUnitsAtRisk(db, cell, run.asOf);
    expect(atRisk.reduce((sum, { failed }) => sum + failed, 0)).toBeGreaterThanOrEqual(signal.observed);
  });
  const before = await signalsOn(day("2024-06-10"));
  expect(before.run.asOf).toBe("2024-06-09");
  expect(before.past).toBe(true);
  expect(before.signals).toEqual([]);
});

test("fault codes of a job are in the record, and a code is followed and told of by itself", async () => {
  await inTransaction(async (tx) => {
    await tx.execute(sql`
      insert into readings (unit_id, job_id, number, check_key, mode, outcome, word, power)
      select unit_id, job_id, 900, 'fault_code', 'fault_code', 'code', 'E21', 'powered_panels_closed' from jobs`);
    await tx.execute(sql`update signal_runs set basis = 'before the codes'`);
  });
  const { signals, run } = await signalsOn();
  const coded = await readOnly((db) => loadSignalRecord(db, { on: today, timeZone: "UTC" }));
  if (coded.kind !== "record") throw new Error(coded.kind);
  expect(coded.record.jobs.every(({ codes }) => codes?.join() === "E21")).toBe(true);
  // Each maker has one model only, so no other machine tells what the code should do: it is no line of its own.
  expect(signals.map((one) => one.key)).toEqual([key]);
  const [signal] = signals;
  if (signal === undefined) return;
  await readOnly(async (db) => {
    const cell = { ...signal.lead.key, kind: "fault_code" as const, word: "E21", madeHalf: undefined };
    const jobs = await loadSignalJobs(db, { cell, from: signal.onsetOn, asOf: run.asOf });
    const [own] = await db.rows<{ jobs: number }>(sql`
      select count(*)::int as jobs from jobs j join units u using (unit_id) join models m using (model_id) join makers k on k.maker_id = m.maker_id
      where k.name = 'Hearth-Wick' and j.failed_on >= ${signal.onsetOn} and j.completed_on <= ${run.asOf}`);
    expect(jobs.jobs).toBe(own?.jobs);
    expect(jobs.elsewhere).toBe(0); // another maker's E21 is another code
    expect(jobs.faultCodes).toEqual([{ key: "E21", name: "E21", jobs: jobs.jobs, elsewhere: 0 }]);
  });
});

test("the funnel counts each component of each model once, over the last four whole quarters", async () => {
  const { funnel } = (await signalsOn()).run;
  expect(funnel?.drawn.map(({ key: { maker } }) => maker).toSorted()).toEqual(["Hearth-Wick", "Tarn & Vale"]);
  expect(funnel?.groups).toBe(2);
  const own = funnel?.drawn.find(({ key: { maker } }) => maker === "Hearth-Wick");
  expect(own?.observed).toBeGreaterThan(own?.expected ?? Number.POSITIVE_INFINITY);
});

test("computing the same day again gives the same list", async () => {
  const first = await signalsOn();
  await inTransaction(async (tx) => void (await tx.execute(sql`update signal_runs set basis = 'other data'`)));
  const again = await signalsOn();
  expect(again.signals).toEqual(first.signals);
  expect(again.run).toEqual(first.run);
});

describe("what people say", () => {
  test("needs a reason to dismiss, holds until it is taken back, and is taken back once", async () => {
    const { asOf } = (await signalsOn()).run;
    expect(await markSignal({ signalKey: key, kind: "dismiss", reason: " ", by: "Ana", asOf })).toEqual({
      kind: "reason-missing",
    });
    expect(await markSignal({ signalKey: "pump~x~y", kind: "watch", reason: "", by: "Ana", asOf })).toEqual({
      kind: "no-such-signal",
    });
    const marked = await markSignal({
      signalKey: key,
      kind: "dismiss",
      reason: "Known lot, recalled",
      by: "Ana",
      asOf,
    });
    if (marked.kind !== "marked") throw new Error(marked.kind);
    const dismissed = (await signalsOn()).signals[0];
    expect(dismissed && stateOfSignal(dismissed)).toEqual({ kind: "dismissed", mark: marked.markId });
    expect(await undoMark({ markId: marked.markId, by: "Ana" })).toEqual({ kind: "undone" });
    expect(await undoMark({ markId: marked.markId, by: "Ana" })).toEqual({ kind: "undone-already" });
    const { signals } = await signalsOn();
    expect(signals[0] && stateOfSignal(signals[0])).toEqual({ kind: "new" });
    expect(signals[0]?.marks.map(({ kind }) => kind)).toEqual(["dismiss", "undo"]);
  });

  test("marks outlive the run that they were made on", async () => {
    await inTransaction(async (tx) => void (await tx.execute(sql`update signal_runs set basis = 'other data'`)));
    expect((await signalsOn()).signals[0]?.marks).toHaveLength(2);
  });
});

test("a note shows on the serials of its range, both ends included, until it is lifted", async () => {
  const note = {
    maker: "Hearth-Wick",
    modelNumber: "FW5500",
    component: "drain_pump",
    words: "Bring a pump",
    signalKey: key,
    by: "Ana",
  };
  const ids = await readOnly((db) =>
    db.rows<{ id: string; serial: string }>(
      sql`select unit_id::text as id, serial_normalised as serial from units where serial like 'H%' order by serial_normalised collate "C" limit 4`,
    ),
  );
  const [first, second, third, fourth] = ids;
  if (first === undefined || second === undefined || third === undefined || fourth === undefined)
    throw new Error("units missing");
  expect(await writeTechnicianNote({ ...note, serials: { from: third.serial, to: second.serial } })).toEqual({
    kind: "serials-reversed",
  });
  expect(await writeTechnicianNote({ ...note, serials: undefined, words: " " })).toEqual({ kind: "no-words" });
  const written = await writeTechnicianNote({ ...note, serials: { from: second.serial, to: third.serial } });
  if (written.kind !== "written") throw new Error(written.kind);
  const shown = async () => {
    const notes = await Promise.all(
      [first, second, third, fourth].map(({ id }) => readOnly((db) => loadNotesOfUnit(db, id))),
    );
    return notes.map((list) => list.length);
  };
  expect(await shown()).toEqual([0, 1, 1, 0]);
  expect(await liftTechnicianNote(written.noteId, "Ana")).toBe(true);
  expect(await liftTechnicianNote(written.noteId, "Ana")).toBe(false);
  expect(await shown()).toEqual([0, 0, 0, 0]);
});

describe("what cannot be answered", () => {
  test("a day before the first failure", async () => {
    expect(signalsFinding(await currentRun(day("2019-01-01")))).toMatch(/No failure is on file up to Tue 1 Jan 2019/);
  });
  test("a record that is too short", async () => {
    expect(signalsFinding(await currentRun(day("2021-01-15")))).toMatch(/78 weeks are needed/);
  });
  test("no unit with a day of service", async () => {
    await inTransaction(async (tx) => {
      await tx.execute(sql`delete from signal_runs`);
      await tx.execute(
        sql`update units set installed_on = null, made_from = null, made_until = null, in_service_on = null, in_service_basis = null`,
      );
      await refreshCounts(tx, "all");
    });
    expect(signalsFinding(await currentRun(undefined))).toMatch(/no unit has a day of installation/);
  });
});

// What a page does up to 200,000 units the night does for all; a page that finds it done does nothing.
test("after a change the night works signals out once, and a page shows those", async () => {
  await signalsOn();
  expect(await settleSignals()).toBe("standing");
  batchOf(await files.load(csv([unit("LATE1", { made: "2023-01-10", installed_on: "2023-02-01" })])));
  expect(await settleSignals()).toBe("worked out");
  const ran = () => readOnly((db) => db.rows(sql`select as_of::text, xmin::text from signal_runs order by 1`));
  const before = await ran();
  expect((await signalsOn()).outdated).toBe(false);
  expect(await ran()).toEqual(before);
  expect(await settleSignals()).toBe("standing");
});
