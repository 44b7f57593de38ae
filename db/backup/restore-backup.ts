import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { join } from "node:path";
import { pipeline } from "node:stream/promises";
import { createGunzip } from "node:zlib";
import { Client } from "pg";
import { from as copyFrom } from "pg-copy-streams";
import { migrateDatabase } from "../migrate";
import { grantAnew } from "../site-role/grant-anew";
import { brokenPromises } from "./broken-promises";
import { BackupError, type Manifest, readManifest } from "./manifest";
import { withStepsUpTo } from "./schema-steps";

/**
 * Fills an empty database from a backup, then brings it to this program's schema. Every file is compared with its hash
 * before the first row goes in; the rows go in as one transaction; what must hold of them together is checked at the end.
 * A restore that is cut off leaves no row, and can be done again.
 * @throws BackupError with the sentence for whoever asked; the database's error
 */
export async function restoreBackup({
  url,
  folder,
}: {
  readonly url: string;
  readonly folder: string;
}): Promise<Manifest> {
  const manifest = await readManifest(folder);
  await checkFiles(folder, manifest);
  const client = new Client({ connectionString: url, application_name: "ohmsworth restore" });
  client.on("error", () => {}); // the statement in hand reports it
  await client.connect();
  try {
    await clearUnused(client);
    await withStepsUpTo(manifest.schema, (steps) => migrateDatabase(url, steps));
    await fill(client, folder, manifest);
    await migrateDatabase(url);
    await grantAnew(client);
    await keepWhatHolds(client);
    await client.query("analyze");
  } finally {
    await client.end().catch(() => {});
  }
  return manifest;
}

async function checkFiles(folder: string, { tables }: Manifest): Promise<void> {
  for (const { file, sha256 } of tables) {
    const hash = createHash("sha256");
    try {
      await pipeline(createReadStream(join(folder, file)), hash);
    } catch (error) {
      throw new BackupError(`${join(folder, file)} belongs to the backup and cannot be read.`, { cause: error });
    }
    if (hash.digest("hex") !== sha256) {
      throw new BackupError(`${join(folder, file)} is no longer as it was written: its bytes have another SHA-256.`);
    }
  }
}

/** A schema without a company may have been set up by a first start; it goes, so that the backup's own can come. */
async function clearUnused(client: Client): Promise<void> {
  const { rows } = await client.query<{ name: string }>(
    "select tablename as name from pg_tables where schemaname = 'public' order by 1",
  );
  const names = new Set(rows.map(({ name }) => name));
  for (const table of ["shop", "batches", "units", "jobs", "claims"]) {
    if (!names.has(table)) continue;
    const found = await client.query(`select from ${table} limit 1`);
    if ((found.rowCount ?? 0) > 0) {
      throw new BackupError(
        `The database already holds a company: ${table} has rows. Restore into a new database; this one is left as it is.`,
      );
    }
  }
  if (names.size > 0) await client.query(clearAll);
}

const clearAll = "drop schema public cascade; create schema public; drop schema if exists drizzle cascade";

async function keepWhatHolds(client: Client): Promise<void> {
  const [broken] = await brokenPromises(client);
  if (broken === undefined) return;
  await client.query(clearAll); // it was empty before
  throw new BackupError(`The backup does not hold what it must: ${broken}. Nothing of it was kept.`);
}

async function fill(client: Client, folder: string, manifest: Manifest): Promise<void> {
  await client.query("start transaction");
  try {
    await client.query("set local statement_timeout = 0; set local TimeZone = 'UTC'; set local DateStyle = 'ISO'");
    const links = await takeLinksOff(client);
    const all = manifest.tables.map(({ name }) => client.escapeIdentifier(name));
    const watchers = await watchedTables(client);
    for (const table of watchers) await client.query(`alter table ${table} disable trigger user`);
    await client.query(`truncate ${all.join(", ")}`); // the schema brings rows of its own, which are in the backup too
    for (const table of manifest.tables) await fillTable(client, folder, table);
    for (const { name, last } of manifest.sequences) {
      await client.query("select setval(quote_ident($1)::regclass, $2::bigint)", [name, last]);
    }
    for (const link of links) await client.query(link);
    for (const table of watchers) await client.query(`alter table ${table} enable trigger user`);
    await client.query("commit");
  } catch (error) {
    await client.query("rollback").catch(() => {});
    throw error;
  }
}

/** Tables go in by name, not in the order in which they refer to one another; all references are checked at the end. */
async function takeLinksOff(client: Client): Promise<string[]> {
  const { rows } = await client.query<{ off: string; on: string }>(`
    select format('alter table %s drop constraint %I', conrelid::regclass, conname) as off,
      format('alter table %s add constraint %I %s', conrelid::regclass, conname, pg_get_constraintdef(oid)) as on
    from pg_constraint where contype = 'f' and connamespace = 'public'::regnamespace order by conrelid::regclass::text, conname`);
  for (const { off } of rows) await client.query(off);
  return rows.map(({ on }) => on);
}

/** The log comes back as it was: putting rows back is no change of them. */
async function watchedTables(client: Client): Promise<string[]> {
  const { rows } = await client.query<{ name: string }>(
    "select distinct tgrelid::regclass::text as name from pg_trigger t join pg_class c on c.oid = t.tgrelid where not tgisinternal and c.relnamespace = 'public'::regnamespace order by 1",
  );
  return rows.map(({ name }) => name);
}

async function fillTable(
  client: Client,
  folder: string,
  { name, columns, file, rows }: Manifest["tables"][number],
): Promise<void> {
  const listed = columns.map((column) => client.escapeIdentifier(column)).join(", ");
  const sink = client.query(copyFrom(`copy ${client.escapeIdentifier(name)} (${listed}) from stdin`));
  await pipeline(createReadStream(join(folder, file)), createGunzip(), sink);
  if (sink.rowCount !== rows) {
    throw new BackupError(`${join(folder, file)} should hold ${rows} rows and holds ${sink.rowCount}.`);
  }
}
