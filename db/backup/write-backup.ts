import { createHash } from "node:crypto";
import { createWriteStream } from "node:fs";
import { mkdir, open, rename, rm } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { Transform } from "node:stream";
import { pipeline } from "node:stream/promises";
import { createGzip } from "node:zlib";
import { Client } from "pg";
import { to as copyTo } from "pg-copy-streams";
import { BackupError, type Manifest, manifestFile } from "./manifest";
import { schemaOf } from "./schema-steps";
import { type StoredTable, storedTables } from "./stored-tables";

/**
 * Writes everything the database holds, photos and papers included, as of one moment, while others go on working.
 * `folder` must not be there yet; it appears under its name only when all of it is on disk.
 * @throws BackupError where the folder is there; the database's or the disk's error, after which nothing is left behind
 */
export async function writeBackup(
  { url, folder }: { readonly url: string; readonly folder: string },
  madeAt: Date,
): Promise<Manifest> {
  const part = join(dirname(folder), `.${basename(folder)}.unfinished`);
  await rm(part, { recursive: true, force: true });
  await mkdir(part, { recursive: true, mode: 0o700 });
  const client = new Client({ connectionString: url, application_name: "ohmsworth backup" });
  client.on("error", () => {}); // the statement in hand reports it
  try {
    await client.connect();
    const manifest = await inOneMoment(client, () => writeAll(client, part, madeAt));
    await writeDurably(join(part, manifestFile), `${JSON.stringify(manifest, undefined, 2)}\n`);
    await takeName(part, folder);
    return manifest;
  } catch (error) {
    await rm(part, { recursive: true, force: true });
    throw error;
  } finally {
    await client.end().catch(() => {});
  }
}

async function inOneMoment<T>(client: Client, work: () => Promise<T>): Promise<T> {
  await client.query("start transaction isolation level repeatable read read only");
  await client.query("set local statement_timeout = 0; set local TimeZone = 'UTC'; set local DateStyle = 'ISO'");
  const done = await work();
  await client.query("rollback"); // it changed nothing
  return done;
}

async function writeAll(client: Client, folder: string, madeAt: Date): Promise<Manifest> {
  const schema = await schemaOf(client);
  const tables: Manifest["tables"] = [];
  for (const table of await storedTables(client)) tables.push(await writeTable(client, folder, table));
  const { rows: sequences } = await client.query<{ name: string; last: string }>(
    "select sequencename as name, last_value::text as last from pg_sequences where schemaname = 'public' and last_value is not null order by 1",
  );
  const changeLog = await lastLink(client, tables);
  const found = { format: "ohmsworth-backup/1", madeAt: madeAt.toISOString(), schema, tables, sequences } as const;
  return changeLog === undefined ? found : { ...found, changeLog };
}

/** Kept beside the backup, where whoever alters the database does not reach. */
async function lastLink(client: Client, tables: Manifest["tables"]): Promise<Manifest["changeLog"]> {
  if (!tables.some(({ name }) => name === "change_chain")) return undefined;
  const { rows } = await client.query<{ link: number; sha256: string }>(
    "select link::double precision as link, sha256 from change_chain order by change_chain.link desc limit 1",
  );
  return rows[0];
}

async function writeTable(
  client: Client,
  folder: string,
  { name, columns }: StoredTable,
): Promise<Manifest["tables"][number]> {
  const file = `${name}.copy.gz`;
  const hash = createHash("sha256");
  const hashed = new Transform({
    transform(chunk: Buffer, _, done) {
      hash.update(chunk);
      done(null, chunk);
    },
  });
  const listed = columns.map((column) => client.escapeIdentifier(column)).join(", ");
  const source = client.query(copyTo(`copy ${client.escapeIdentifier(name)} (${listed}) to stdout`));
  // Flushed by the stream itself when it closes: a backup that is only in memory is none.
  await pipeline(
    source,
    createGzip({ level: 4 }),
    hashed,
    createWriteStream(join(folder, file), { flush: true, mode: 0o600 }),
  );
  return { name, columns: [...columns], rows: source.rowCount, file, sha256: hash.digest("hex") };
}

async function takeName(part: string, folder: string): Promise<void> {
  try {
    await rename(part, folder);
  } catch (error) {
    throw new BackupError(`${folder} is there already, or cannot be made. Choose another name.`, { cause: error });
  }
}

async function writeDurably(path: string, text: string): Promise<void> {
  const file = await open(path, "wx", 0o600);
  try {
    await file.writeFile(text);
    await file.sync();
  } finally {
    await file.close();
  }
}
