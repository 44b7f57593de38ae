// A file that brings a job while its sheet is still open on a phone.
import { randomUUID } from "node:crypto";
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadJobRecord } from "@/db/queries/job-record";
import { joinJobToUnit } from "@/db/writes/joining/join-job-to-unit";
import { undoJobJoin } from "@/db/writes/joining/undo-job-join";
import { reencodePhoto } from "@/db/writes/photos/reencode-photo";
import { recount } from "@/db/writes/recount";
import { type ClosingJob, closeJob } from "@/db/writes/sheets/close-job";
import { keepAnswer } from "@/db/writes/sheets/keep-answer";
import { keepPhoto } from "@/db/writes/sheets/keep-photo";
import { day } from "@/lib/calendar/day";
import { csv, fileFolder, job, partLine, shopDocument, startAfresh, unit } from "./intake-files";
import { openWasherJob } from "./open-washer-job";
import { marked } from "./photos-hostile";

const files = fileFolder();

beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1")]));
  await files.load(csv([job("J1", "A1")]));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

async function begin(jobNumber: string): Promise<void> {
  await openWasherJob(jobNumber);
  const given = { kind: "skip", reason: "no_access" } as const;
  const hose = {
    kind: "reading",
    mode: "observation",
    outcome: { kind: "finding", word: "clear" },
    power: "off",
    cautionsRead: true,
  } as const;
  const none = {
    pointA: undefined,
    pointB: undefined,
    isolated: undefined,
    loadConnected: undefined,
    commanded: undefined,
    temperatureC: undefined,
    sheetLow: undefined,
    sheetHigh: undefined,
    sheetReference: undefined,
  };
  const common = { time: 1, note: "", at: "2025-06-30T09:00:00-05:00" };
  await keepAnswer(jobNumber, { ...common, id: randomUUID(), sequence: 1, check: "fault_code", given });
  await keepAnswer(jobNumber, { ...common, id: randomUUID(), sequence: 2, check: "hose", given: { ...hose, ...none } });
  const picture = await reencodePhoto(await marked("jpeg"));
  if (!picture.ok) throw new Error(picture.problem);
  const kept = await keepPhoto({
    jobNumber,
    id: randomUUID(),
    check: undefined,
    subject: "plate",
    photo: picture.photo,
  });
  expect(kept).toEqual({ kind: "kept" });
}

const closing = (jobNumber: string): ClosingJob => ({
  jobNumber,
  complaint: undefined,
  causeNote: "Suds lock the pump.",
  correction: "Rinsed twice.",
  cause: "suds_detergent",
  component: undefined,
  failureMode: undefined,
  parts: [],
  callbackOf: undefined,
  visits: 1,
  labourMinutes: undefined,
  today: day("2025-06-30"),
  by: "Kit",
});
const close = (jobNumber: string) => closeJob(closing(jobNumber), async () => {}, { status: 200, body: {} });

/** The unit on which each part of the open job hangs, by table. */
const hangsOn = async (jobNumber: string) =>
  await readOnly((db) =>
    db.rows<{ what: string; serial: string | null }>(sql`
      with o as (select unit_id, job_id from open_jobs where job_number = ${jobNumber}),
      all_of as (select 'job' as what, unit_id from o union all select 'answers', a.unit_id from sheet_answers a join o using (job_id)
        union all select 'photo', p.unit_id from sheet_photos p join o using (job_id))
      select distinct what, u.serial from all_of join units u using (unit_id) order by 1`),
  );

test("an open sheet with its photos follows its job to the unit and back", async () => {
  await begin("S1");
  await files.load(csv([job("S1", "", { requested_on: "2025-06-20", completed_on: "2025-06-29" })]));
  expect(await close("S1")).toEqual({ kind: "on another unit" });
  const request = { jobNumber: "S1", maker: "Hearth-Wick", serial: "A1", by: "Robin", reason: "The plate." };
  expect(await joinJobToUnit(request)).toMatchObject({ kind: "joined" });
  expect(await hangsOn("S1")).toEqual(["answers", "job", "photo"].map((what) => ({ what, serial: "A1" })));
  expect(await undoJobJoin("S1")).toEqual({ kind: "undone" });
  expect(await hangsOn("S1")).toEqual(["answers", "job", "photo"].map((what) => ({ what, serial: null })));
  await joinJobToUnit(request);
  expect(await close("S1")).toEqual({ kind: "closed" });
  expect((await readOnly((db) => loadJobRecord(db, "S1")))?.record.attachments).toHaveLength(1);
});

test("closed by a file meanwhile: the technician's story, readings and photo go over it, once; its days and parts stay", async () => {
  await begin("S2");
  await files.load(csv([job("S2", "A1", { requested_on: "2025-06-20", completed_on: "2025-06-28" })]));
  await files.load(csv([partLine("S2", 1)]));
  expect(await close("S2")).toEqual({ kind: "closed" });
  expect(await close("S2")).toEqual({ kind: "closed already" });
  const record = (await readOnly((db) => loadJobRecord(db, "S2")))?.record;
  expect(record?.job).toMatchObject({
    completedOn: "2025-06-28",
    cause: "suds_detergent",
    causeNote: "Suds lock the pump.",
  });
  expect(record?.job.component).toBeUndefined();
  expect([record?.readings.length, record?.attachments.length, record?.partLines.length]).toEqual([1, 1, 1]);
  const [edit] = await readOnly((db) =>
    db.rows(
      sql`select value_before as before, value, by from hand_edits where column_name = 'cause' and lifted_at is null and value = '"suds_detergent"' order by edit_id desc`,
    ),
  );
  expect(edit).toEqual({ before: "component", value: "suds_detergent", by: "Kit" });
  expect((await recount()).filter(({ differing }) => differing > 0)).toEqual([]);
});
