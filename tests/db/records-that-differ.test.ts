import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadRecords } from "@/db/writes/load-records";
import { takeBack } from "@/db/writes/take-back";
import { type JobRecord, readJobRecords } from "@/lib/intake/records/read-job-records";
import { batchOf, csv, fileFolder, job, partLine, shopDocument, startAfresh, today, unit } from "./intake-files";
import { counts, problems } from "./load-outcome";
import { stateOfData } from "./state-of-data";

const files = fileFolder();
beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1"), unit("A2")]));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

function recordsOf(jobs: readonly unknown[]): readonly JobRecord[] {
  const read = readJobRecords({ jobs });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.records;
}

const send = async (jobs: readonly unknown[]) =>
  await loadRecords({ records: recordsOf(jobs), sender: "a program", mode: "add", today });

const stored = async () =>
  await readOnly((db) =>
    db.rows(
      sql`select job_number as job, complaint, technician, visits, status, labour_cents::integer as labour from jobs order by 1`,
    ),
  );

test("a record that leaves a column out leaves what is stored, also where another record has it", async () => {
  const full = { complaint: "Will not drain", technician: "T7", visits: 2, status: "void", labour: "50.00" };
  await send([job("J1", "A1", full), job("J2", "A2", full)]);
  const before = await stateOfData();
  const bare = { job_number: "J1", maker: "Hearth-Wick", model: "FW5500", serial: "A1", completed_on: "2023-05-03" };
  const result = await send([bare, { ...job("J2", "A2"), technician: null, visits: 3 }]);
  expect(problems(result)).toEqual([]);
  expect(counts(result)).toEqual([2, 0, 1, 1, 0]);
  expect(await stored()).toEqual([
    { job: "J1", complaint: "Will not drain", technician: "T7", visits: 2, status: "void", labour: 5000 },
    { job: "J2", complaint: "Will not drain", technician: null, visits: 3, status: "void", labour: 5000 },
  ]);
  await takeBack(batchOf(result));
  expect(await stateOfData()).toEqual(before);
});

test("the same holds of part lines, and a day that is left out still may not be contradicted", async () => {
  const line = { ...partLine("J1", 1), description: "Pump", distributor: "Main Street Supply" };
  await send([{ ...job("J1", "A1"), part_lines: [line, { ...line, line: 2 }] }]);
  const { description: _, distributor: __, ...less } = line;
  const again = await send([
    {
      ...job("J1", "A1"),
      part_lines: [
        { ...less, quantity: 4 },
        { ...line, line: 2 },
      ],
    },
  ]);
  expect(counts(again)).toEqual([3, 0, 1, 2, 0]);
  const lines = await readOnly((db) =>
    db.rows(sql`select quantity, description, distributor from part_lines order by line`),
  );
  expect(lines).toEqual([
    { quantity: 4, description: "Pump", distributor: "Main Street Supply" },
    { quantity: 1, description: "Pump", distributor: "Main Street Supply" },
  ]);
  const { requested_on: ___, ...undated } = job("J1", "A1", { completed_on: "2023-04-30" });
  const wrong = await send([undated, job("J2", "A2")]);
  expect(wrong.kind).toBe("refused");
  expect("report" in wrong && wrong.report.problems.map(({ problem }) => problem)).toEqual([
    "would have completed_on 2023-04-30 before requested_on 2023-05-01",
  ]);
});
