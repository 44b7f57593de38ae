// An answer that a full phone could not keep, whose sending nobody confirmed, and that was given again.
import { randomUUID } from "node:crypto";
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { keepAnswer } from "@/db/writes/sheets/keep-answer";
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";
import { csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";
import { openWasherJob } from "./open-washer-job";

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

function skipped(sequence: number, standsFor?: readonly string[]): SheetAnswer {
  const given = { kind: "skip", reason: "no_access" } as const;
  const common = { time: 1, note: "", at: "2025-06-30T09:00:00-05:00", check: "fault_code", given };
  return { ...common, id: randomUUID(), sequence, ...(standsFor === undefined ? {} : { standsFor }) };
}

const onFile = (jobNumber: string) =>
  readOnly(async (db) =>
    (
      await db.rows<{ id: string }>(sql`
        select a.answer_id as id from sheet_answers a join open_jobs o using (unit_id, job_id) where o.job_number = ${jobNumber} order by a.sequence, 1`)
    ).map(({ id }) => id),
  );

test("the second try stands for the first, whichever of them reaches the server first", async () => {
  await openWasherJob("S1");
  const other = skipped(1);
  const [first, again] = [skipped(2), skipped(2)];
  const second = skipped(2, [first.id, again.id]);
  await keepAnswer("S1", other);
  expect(await keepAnswer("S1", first)).toEqual({ kind: "kept" });
  expect(await keepAnswer("S1", second)).toEqual({ kind: "kept" });
  expect(await onFile("S1")).toEqual([other.id, second.id]);
  expect(await keepAnswer("S1", again)).toEqual({ kind: "here already" }); // slower on its way than the phone was patient
  expect(await keepAnswer("S1", first)).toEqual({ kind: "here already" });
  expect(await onFile("S1")).toEqual([other.id, second.id]);
});

test("it stands for tries of its own job only", async () => {
  await openWasherJob("S2");
  await openWasherJob("S3");
  const mine = skipped(1);
  await keepAnswer("S2", mine);
  await keepAnswer("S3", skipped(1, [mine.id]));
  expect(await onFile("S2")).toEqual([mine.id]);
});
