// What is worked out ahead of the pages is out of reach: a lock stands for a table that is slow, damaged or being rebuilt.
import { sql } from "drizzle-orm";
import { Client } from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { GET as photo } from "@/app/jobs/[number]/photos/[id]/route";
import { POST as sendClosing } from "@/app/sheet/job/[number]/close/route";
import { ReadTimeout, readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { loadClaimList } from "@/db/queries/claim-list";
import { loadExposureCells } from "@/db/queries/exposure-cells";
import { loadJobList } from "@/db/queries/job-list";
import { loadJobRecord } from "@/db/queries/job-record";
import { grantSiteRights } from "@/db/site-role/grant-site-rights";
import { siteAddress } from "@/db/site-role/site-address";
import { ownDatabaseUrl } from "../own-database";
import { csv, fileFolder, job, partLine, shopDocument, startAfresh, unit } from "./intake-files";
import { openWasherJob } from "./open-washer-job";
import { headersAs } from "./people/signed-in";

const fixed = process.env.OHMSWORTH_TODAY;

const files = fileFolder();
const other = new Client({ connectionString: ownDatabaseUrl() });

beforeAll(async () => {
  process.env.OHMSWORTH_TODAY = "2025-06-30";
  await other.connect();
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1")]));
  await files.load(csv([job("J1", "A1")]));
  await files.load(csv([partLine("J1", 1)]));
});
afterAll(async () => {
  if (fixed === undefined) delete process.env.OHMSWORTH_TODAY;
  else process.env.OHMSWORTH_TODAY = fixed;
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

/** As the phone closes it. @returns status of the answer */
async function close(jobNumber: string): Promise<number> {
  await openWasherJob(jobNumber);
  const headers = { ...(await headersAs("technician", "Kit")), "idempotency-key": jobNumber };
  const body = JSON.stringify({
    causeNote: "Pump winding open.",
    correction: "Replaced the pump.",
    cause: "component",
    component: "drain_pump",
    failureMode: "winding_open",
    visits: 1,
    parts: [{ partNumber: "P-100", quantity: 1 }],
  });
  const request = new Request("http://localhost/", { method: "POST", body, headers });
  return (await sendClosing(request, { params: Promise.resolve({ number: jobNumber }) })).status;
}

const claims = () => readOnly((db) => loadClaimList(db, { states: ["draft"] }), { timeoutSeconds: 5 });

test("while what was worked out of signals and parts cannot be read, jobs are closed and claims read as ever", async () => {
  await other.query(
    "start transaction; lock table signal_runs, found_signals, settled_quarter, part_outlooks, part_plans, demand_totals, demand_knowledge in access exclusive mode",
  );
  try {
    expect(await close("S1")).toBe(200);
    expect(await claims()).toEqual([]);
  } finally {
    await other.query("rollback");
  }
  expect(await readOnly((db) => loadJobRecord(db, "S1"))).toMatchObject({ record: { job: { jobNumber: "S1" } } });
});

test("while no photo can be read, jobs are read and closed and claims read as ever, and the photo says that it failed", async () => {
  await inTransaction((tx) =>
    tx.execute(sql`
      insert into attachments (unit_id, job_id, attachment_id, subject, caption, media_type, received_sha256, stored_sha256, stored_bytes, content)
      select unit_id, job_id, 1, 'meter', '', 'image/jpeg', ${"a".repeat(64)}, ${"a".repeat(64)}, 3, '\\x010203' from jobs where job_number = 'J1'`),
  );
  const ask = async () => {
    const request = new Request("http://localhost/", { headers: await headersAs("owner") });
    return await photo(request, { params: Promise.resolve({ number: "J1", id: "1" }) });
  };
  expect((await ask()).status).toBe(200);
  const { role } = siteAddress(ownDatabaseUrl());
  const { rows } = await other.query<{ names: string }>(
    "select string_agg(quote_ident(attname), ', ') as names from pg_attribute where attrelid = 'attachments'::regclass and attnum > 0 and not attisdropped and attname <> 'content'",
  );
  await other.query(
    `revoke select on attachments from ${role}; grant select (${rows[0]?.names}) on attachments to ${role}`,
  );
  try {
    await expect(ask()).rejects.toThrow("Failed query"); // which the server answers with 500 and a code
    const found = await readOnly((db) => loadJobRecord(db, "J1"), { timeoutSeconds: 5 });
    expect(found?.record.attachments).toHaveLength(1);
    expect(await close("S2")).toBe(200);
    expect(await claims()).toEqual([]);
  } finally {
    await grantSiteRights(other, role);
  }
  expect((await ask()).status).toBe(200);
});
