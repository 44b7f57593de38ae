import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Client } from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { restoreBackup } from "@/db/backup/restore-backup";
import { writeBackup } from "@/db/backup/write-backup";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { eraseCustomer, repeatErasures } from "@/db/erasure/erase-customer";
import { keepErasureList, readErasureList } from "@/db/erasure/erasure-list";
import { findAlteredEvidence } from "@/db/queries/altered-evidence";
import { checkChangeChain } from "@/db/queries/change-chain";
import { findRowsNotAsLogged } from "@/db/queries/rows-not-as-logged";
import { editJob } from "@/db/writes/edit-job";
import { emptyDatabaseBeside } from "../database-server";
import { ownDatabaseUrl } from "../own-database";
import { csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";
import { stateOfData } from "./state-of-data";

const files = fileFolder();
const folder = mkdtempSync(join(tmpdir(), "ohmsworth-erasure-"));
const owner = new Client({ connectionString: ownDatabaseUrl() });
/** Nobody: the names are of no person, the number is of those that are given to none. */
const asked = {
  words: ["Annabel Quillfeather", "(510) 555-0134", "12 Larkspur Close", "quill@example.org"],
  jobNumbers: ["J1", "J2"],
  by: "Kim",
  reason: "Asked by letter on 3 May",
  at: new Date("2026-05-04T10:00:00Z"),
};
const canaries = ["quillfeather", "annabel", "5550134", "555-0134", "larkspur", "quill@"];

beforeAll(async () => {
  await owner.connect();
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1"), unit("A2"), unit("A3")]));
  const said = "Ms. ANNABEL  quillfeather (510.555.0134) of 12 Larkspur Close says it hums; write to quill@example.org";
  await files.load(
    csv([
      job("J1", "A1", { complaint: said, correction: "Told Quillfeather to call" }),
      job("J2", "A2", { complaint: "It leaks.", correction: "Key at Annabel's neighbour" }),
      job("J3", "A3", { complaint: "Annabel Lee asks for a call", correction: "Rang 5105550134 by mistake" }),
    ]),
  );
  await files.load(csv([job("J9", "A1", { completed_on: "soon", complaint: `for ${said}` })]), "add and set aside");
  await files.load(
    csv([
      {
        job_number: "J1",
        number: 1,
        check: "drain_pump_winding",
        mode: "ohms",
        outcome: "number",
        value: 12,
        unit: "Ω",
        power: "off",
        note: "Quillfeather’s dog",
      },
    ]),
  );
  const edit = { jobNumber: "J1", column: "cause_note", by: "Kim", reason: "Ms. Quillfeather rang" } as const;
  await editJob({ ...edit, value: "Annabel Quillfeather dropped a coin" });
  await owner.query(`insert into attachments (unit_id, job_id, attachment_id, subject, caption, media_type, received_sha256, stored_sha256, stored_bytes, content)
    select unit_id, job_id, n, (array['signature', 'meter'])[n], 'Quillfeather', 'image/jpeg', encode(sha256(content), 'hex'), encode(sha256(content), 'hex'), 3, content
    from jobs, generate_series(1, 2) n, (select '\\x010203'::bytea as content) c where job_number = 'J1'`);
});
afterAll(async () => {
  files.remove();
  rmSync(folder, { recursive: true, force: true });
  await owner.end();
  await closeDatabase();
});

/** Tables in which a canary still stands, read by the database itself. */
async function finds(client: Client = owner): Promise<string[]> {
  const tables = await client.query<{ name: string }>(
    "select c.relname as name from pg_class c where relnamespace = 'public'::regnamespace and relkind = 'r' and relpersistence = 'p' order by 1",
  );
  const found: string[] = [];
  for (const { name } of tables.rows) {
    const { rows } = await client.query<{ text: string }>(`select lower(to_jsonb(t)::text) as text from "${name}" t`);
    for (const { text } of rows) {
      const hit = canaries.find((canary) => text.includes(canary));
      if (hit !== undefined) found.push(`${name}: ${hit}`);
    }
  }
  return found;
}

const counts = async () =>
  Object.fromEntries(Object.entries(await stateOfData()).filter(([table]) => !["jobs", "readings"].includes(table)));

test("a trial says where the customer stands and changes nothing", async () => {
  const before = [await finds(), await stateOfData()];
  const { erased } = await eraseCustomer(asked, { dry: true });
  expect(Object.fromEntries(erased.map(({ place, cells }) => [place, cells]))).toMatchObject({
    "jobs.complaint": 1,
    "jobs.cause_note": 1,
    "jobs.correction": 3,
    "held_rows.cells": 1,
    "hand_edits.value": 1,
    "attachments.caption": 1,
    attachments: 1,
  });
  expect([await finds(), await stateOfData()]).toEqual(before);
});

test("erased, the customer stands nowhere, others do, and every count is what it was", async () => {
  const before = await counts();
  const chainBefore = await readOnly((db) => checkChangeChain(db, []));
  const backup = join(folder, "before");
  await writeBackup({ url: ownDatabaseUrl(), folder: backup }, new Date("2026-05-01T00:00:00Z"));
  await eraseCustomer(asked, { dry: false });
  expect(await finds()).toEqual(["jobs: annabel"]); // Annabel Lee, who is somebody else
  const texts = await owner.query("select complaint, correction from jobs order by job_number");
  expect(texts.rows).toEqual([
    {
      complaint: "Ms. [erased] ([erased]) of [erased] says it hums; write to [erased]",
      correction: "Told [erased] to call",
    },
    { complaint: "It leaks.", correction: "Key at [erased]'s neighbour" },
    { complaint: "Annabel Lee asks for a call", correction: "Rang [erased] by mistake" },
  ]);
  expect(await counts()).toEqual(before);
  expect((await owner.query("select subject from attachments")).rows).toEqual([{ subject: "meter" }]);
  expect(await readOnly(findAlteredEvidence)).toEqual([]);
  const chain = await readOnly((db) => checkChangeChain(db, []));
  expect(chain.kind === "whole" && chainBefore.kind === "whole" && chain.links > chainBefore.links).toBe(true);
  expect(await readOnly(findRowsNotAsLogged)).toEqual([]);
});

test("a backup from before, restored, is without the customer again: the list beside the backups knows", async () => {
  const list = join(folder, "erasures.jsonl");
  await keepErasureList(list);
  await keepErasureList(list); // adds nothing twice
  expect(await readErasureList(list)).toHaveLength(1);
  expect(canaries.filter((canary) => readFileSync(list, "utf8").toLowerCase().includes(canary))).toEqual([]);
  const there = await emptyDatabaseBeside(ownDatabaseUrl());
  const client = new Client({ connectionString: there.url });
  try {
    await restoreBackup({ url: there.url, folder: join(folder, "before") });
    await client.connect();
    expect((await finds(client)).length).toBeGreaterThan(5);
    await closeDatabase();
    process.env.DATABASE_URL = there.url;
    expect(await repeatErasures(await readErasureList(list))).toBe(1);
    expect(await repeatErasures(await readErasureList(list))).toBe(0);
    expect(await finds(client)).toEqual(["jobs: annabel"]);
  } finally {
    await closeDatabase();
    process.env.DATABASE_URL = ownDatabaseUrl();
    await client.end();
    await there.drop();
  }
});

test.each([
  [{ words: ["Li"] }, /“Li” has fewer than 5 letters/],
  [{ words: [] }, /at least one name/],
  [{ jobNumbers: ["J1", "J404"] }, /no job J404 is on file/],
  [{ reason: " " }, /both must be said/],
])("%j is refused with a sentence", async (change, says) => {
  await expect(eraseCustomer({ ...asked, ...change }, { dry: true })).rejects.toThrow(says);
});
