// Words that would be statements, paths or patterns if anything took them for more than words.
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readJobFilter } from "@/app/jobs/read-job-filter";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadAttachment } from "@/db/queries/attachment";
import { findClaim } from "@/db/queries/claim-list";
import { loadJobHistory } from "@/db/queries/job-history";
import { loadJobList } from "@/db/queries/job-list";
import { loadJobRecord } from "@/db/queries/job-record";
import { loadLookAlikes, loadUnitList } from "@/db/queries/unit-list";
import { editJob } from "@/db/writes/edit-job";
import { csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";
import { stateOfData } from "./state-of-data";

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

const hostile = [
  "'; drop table jobs; --",
  "' or '1'='1",
  "\\'; select pg_sleep(9); --",
  "$$; truncate units; $$",
  "1; update jobs set complaint = ''",
  "x') union select usename from pg_user --",
  "%' or 1=1 /*",
  "%_%",
  "*/ or true /*",
  "../../../etc/passwd",
  "..\\..\\windows",
  "%00",
  "#{process.exit()}",
  "$1",
  "\u2019 or \u20191\u2019=\u20191",
];

test("hostile words find nothing, change nothing and break nothing, wherever a word can be asked for", async () => {
  const before = await stateOfData();
  const names = [
    "make",
    "model",
    "type",
    "component",
    "symptom",
    "cause",
    "tech",
    "payer",
    "from",
    "to",
    "age",
    "count",
    "words",
    "page",
  ];
  const looked: readonly string[] = ["make", "model", "component", "symptom", "tech", "words"]; // of the others no word is asked of the database
  for (const word of hostile) {
    await readOnly(async (db) => {
      for (const name of names) {
        const { filter } = readJobFilter({ [name]: word });
        const { total } = await loadJobList(db, filter, { offset: 0, limit: 10 });
        expect(total, `${name}=${word}`).toBe(looked.includes(name) ? 0 : 1);
      }
      expect(await loadJobRecord(db, word)).toBeUndefined();
      expect(await findClaim(db, word)).toBeUndefined();
      expect(await loadLookAlikes(db, word)).toEqual([]);
      expect((await loadJobHistory(db, word)).fields).toEqual([]);
      expect(await loadAttachment(db, word, "1")).toBeUndefined();
    });
    const edit = { value: "x", by: "Kim", reason: "r" };
    await expect(editJob({ ...edit, jobNumber: "J1", column: word })).rejects.toThrow(RangeError);
    expect(await editJob({ ...edit, jobNumber: word, column: "complaint" })).toEqual({ kind: "no such job" });
  }
  expect(await stateOfData()).toEqual(before);
});

test("a word that is stored comes back as it was written", async () => {
  const all = hostile.join(" ").replaceAll("\u0000", "");
  await editJob({ jobNumber: "J1", column: "complaint", value: all, by: "Kim", reason: "r" });
  const [row] = await readOnly((db) =>
    db.rows<{ complaint: string }>(sql`select complaint from jobs where job_number = 'J1'`),
  );
  expect(row?.complaint).toBe(all);
  expect((await readOnly((db) => loadUnitList(db, undefined, { offset: 0, limit: 5 }))).total).toBe(1);
});
