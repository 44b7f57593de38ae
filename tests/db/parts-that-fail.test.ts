// What is worked out ahead of the pages is out of reach: a lock stands for a table that is slow, damaged or being rebuilt.
import { Client } from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { ReadTimeout, readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadClaimList } from "@/db/queries/claim-list";
import { loadExposureCells } from "@/db/queries/exposure-cells";
import { loadJobList } from "@/db/queries/job-list";
import { loadJobRecord } from "@/db/queries/job-record";
import { ownDatabaseUrl } from "../own-database";
import { csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
const other = new Client({ connectionString: ownDatabaseUrl() });

beforeAll(async () => {
  await other.connect();
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1")]));
  await files.load(csv([job("J1", "A1")]));
});
afterAll(async () => {
  files.remove();
  await other.end();
  await closeDatabase();
});

test("while the counts cannot be read, rates say so in their time, and jobs and claims are read as ever", async () => {
  await other.query(
    "start transaction; lock table job_cells, unit_windows, part_outlooks, found_signals in access exclusive mode",
  );
  try {
    const rates = readOnly((db) => loadExposureCells(db, {}), { timeoutSeconds: 1 });
    await expect(rates).rejects.toThrow(ReadTimeout);
    const { total } = await readOnly((db) => loadJobList(db, {}, { offset: 0, limit: 10 }), { timeoutSeconds: 5 });
    expect(total).toBe(1);
    expect(await readOnly((db) => loadJobRecord(db, "J1"), { timeoutSeconds: 5 })).toMatchObject({
      record: { job: { jobNumber: "J1" } },
    });
    expect(await readOnly((db) => loadClaimList(db, { states: ["draft"] }), { timeoutSeconds: 5 })).toEqual([]);
  } finally {
    await other.query("rollback");
  }
});
