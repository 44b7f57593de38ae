// Two backups of databases that hold the same are the same to the byte, so a restored database is held to the one it
// was made from by backing it up in turn.
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Client } from "pg";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import type { Manifest } from "@/db/backup/manifest";
import { restoreBackup } from "@/db/backup/restore-backup";
import { withStepsUpTo } from "@/db/backup/schema-steps";
import { tryBackup } from "@/db/backup/try-backup";
import { writeBackup } from "@/db/backup/write-backup";
import { closeDatabase } from "@/db/close-database";
import { migrateDatabase } from "@/db/migrate";
import { emptyDatabaseBeside } from "../../database-server";
import { ownDatabaseUrl } from "../../own-database";
import { csv, fileFolder, job, partLine, shopDocument, startAfresh, unit } from "../intake-files";

const files = fileFolder();
const folder = mkdtempSync(join(tmpdir(), "ohmsworth-backups-"));
const madeAt = new Date("2026-11-20T03:00:00Z");
const here = ownDatabaseUrl();
let count = 0;
const drops: (() => Promise<void>)[] = [];

beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1"), unit("A2", { sold_on: "2022-02-01" })]));
  await files.load(csv([job("J1", "A1"), job("J2", "A2", { requested_on: "2024-01-02", completed_on: "2024-01-05" })]));
  await files.load(csv([partLine("J1", 1), partLine("J2", 1, { unit_cost: "1.00" })]));
});
afterEach(async () => {
  for (const drop of drops.splice(0)) await drop();
});
afterAll(async () => {
  files.remove();
  rmSync(folder, { recursive: true, force: true });
  await closeDatabase();
});

async function emptyDatabase(): Promise<string> {
  const { url, drop } = await emptyDatabaseBeside(here);
  drops.push(drop);
  return url;
}

async function backup(url: string) {
  const to = join(folder, String(++count));
  return { folder: to, manifest: await writeBackup({ url, folder: to }, madeAt) };
}

async function asked<Row extends Record<string, unknown>>(url: string, statement: string): Promise<Row[]> {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query<Row>(statement)).rows;
  } finally {
    await client.end();
  }
}

const tablesOf = async (url: string) =>
  (await asked<{ n: number }>(url, "select count(*)::integer as n from pg_tables where schemaname = 'public'"))[0]?.n;
const rowsOf = ({ tables }: Manifest) => Object.fromEntries(tables.map(({ name, rows }) => [name, rows]));

test("a restored database is the one that was backed up, to the last row and number, and goes on from there", async () => {
  const first = await backup(here);
  expect(rowsOf(first.manifest)).toMatchObject({ units: 2, jobs: 2, part_lines: 2, batches: 4, shop: 1 });
  const there = await emptyDatabase();
  await restoreBackup({ url: there, folder: first.folder });
  const second = await backup(there);
  expect(second.manifest).toEqual(first.manifest); // the hashes of all tables are in it
  const links = "select count(*)::integer as n from pg_constraint where contype = 'f'";
  expect(await asked(there, links)).toEqual(await asked(here, links));
  const next = await asked<{ id: number }>(
    there,
    "insert into makers (name, normalised) values ('Next', 'NEXT') returning maker_id as id",
  );
  const last = await asked<{ id: number }>(here, "select last_value::integer as id from makers_maker_id_seq");
  expect(next[0]?.id).toBe((last[0]?.id ?? 0) + 1);
});

test("a first start's empty schema makes room; a company does not", async () => {
  const { folder: from } = await backup(here);
  const started = await emptyDatabase();
  await migrateDatabase(started);
  await restoreBackup({ url: started, folder: from });
  await expect(restoreBackup({ url: started, folder: from })).rejects.toThrow(/already holds a company: shop has rows/);
});

test("one flipped byte is named, and nothing goes in", async () => {
  const { folder: from } = await backup(here);
  const path = join(from, "jobs.copy.gz");
  const bytes = readFileSync(path);
  bytes[bytes.length >> 1] = (bytes[bytes.length >> 1] ?? 0) ^ 1;
  writeFileSync(path, bytes);
  const there = await emptyDatabase();
  await expect(restoreBackup({ url: there, folder: from })).rejects.toThrow(
    /jobs\.copy\.gz is no longer as it was written/,
  );
  expect(await tablesOf(there)).toBe(0);
});

test.each([
  ["no manifest", (path: string) => rmSync(path), /is no finished backup/],
  [
    "half a manifest",
    (path: string) => writeFileSync(path, readFileSync(path).subarray(0, 90)),
    /is not as this program writes it/,
  ],
  ["another format", (path: string) => writeFileSync(path, '{"format":"other/1"}'), /at format/],
  [
    "a schema of the future",
    (path: string) =>
      writeFileSync(path, readFileSync(path, "utf8").replace(/"schema": "[^"]*"/, '"schema": "9999_later"')),
    /9999_later, which this program does not know/,
  ],
  [
    "a file outside the folder",
    (path: string) => writeFileSync(path, readFileSync(path, "utf8").replace("jobs.copy.gz", "../jobs.copy.gz")),
    /is not as this program writes it, at tables/,
  ],
])("a backup with %s is refused with a sentence", async (_, spoil, says) => {
  const { folder: from } = await backup(here);
  spoil(join(from, "manifest.json"));
  await expect(restoreBackup({ url: await emptyDatabase(), folder: from })).rejects.toThrow(says);
});

test("fewer rows than the manifest says leave nothing behind", async () => {
  const { folder: from } = await backup(here);
  const path = join(from, "manifest.json");
  const manifest: Manifest = JSON.parse(readFileSync(path, "utf8"));
  const tables = manifest.tables.map((table) => (table.name === "units" ? { ...table, rows: 3 } : table));
  writeFileSync(path, JSON.stringify({ ...manifest, tables }));
  const there = await emptyDatabase();
  await expect(restoreBackup({ url: there, folder: from })).rejects.toThrow(/should hold 3 rows and holds 2/);
  expect(await asked(there, "select * from batches")).toEqual([]);
});

test("a promise that the rows break is named, and the database is empty again", async () => {
  const source = await emptyDatabase();
  await restoreBackup({ url: source, folder: (await backup(here)).folder });
  await asked(source, "update batches set rows_held = 1, rows_total = rows_total + 1 where batch_id = 1");
  const there = await emptyDatabase();
  const restored = restoreBackup({ url: there, folder: (await backup(source)).folder });
  await expect(restored).rejects.toThrow(/a load keeps fewer rows aside than it says/);
  expect(await tablesOf(there)).toBe(0);
});

test("a backup of the first schema comes back in today's", async () => {
  const old = await emptyDatabase();
  await withStepsUpTo("0000_first_schema", (steps) => migrateDatabase(old, steps));
  await asked(old, "insert into makers (name, normalised) values ('Hearth-Wick', 'HEARTH-WICK')");
  const { folder: from, manifest } = await backup(old);
  expect(manifest.schema).toBe("0000_first_schema");
  const there = await emptyDatabase();
  await restoreBackup({ url: there, folder: from });
  expect(await asked(there, "select name from makers")).toEqual([{ name: "Hearth-Wick" }]);
  expect(await tablesOf(there)).toBe(await tablesOf(here));
});

test("a folder that is there is not written into", async () => {
  const { folder: from } = await backup(here);
  await expect(writeBackup({ url: here, folder: from }, madeAt)).rejects.toThrow(/is there already/);
  expect(existsSync(join(folder, `.${count}.unfinished`))).toBe(false);
});

test("a trial restores the backup, removes its database and is kept with what it found", async () => {
  const good = await backup(here);
  const databases = "select count(*)::integer as n from pg_database where datname like 'ohmsworth_trial_%'";
  const before = await asked(here, databases);
  await tryBackup({ url: here, folder: good.folder }, good.manifest, () => new Date("2026-11-20T03:10:00Z"));
  rmSync(join(good.folder, "units.copy.gz"));
  const trial = tryBackup({ url: here, folder: good.folder }, good.manifest, () => new Date("2026-11-21T03:10:00Z"));
  await expect(trial).rejects.toThrow(/units\.copy\.gz belongs to the backup/);
  expect(await asked(here, databases)).toEqual(before);
  const kept = await asked<{ problem: string | null }>(here, "select problem from restore_drills order by drill_id");
  expect(kept.map(({ problem }) => problem === null)).toEqual([true, false]);
});
