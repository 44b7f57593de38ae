// What the tables cost by themselves: the rows of a load, ready in COPY's binary format, into tables like those that hold
// them, with their indexes and references, over two connections at once. Nothing is read, checked, matched or counted, so
// that no load can be quicker.
import { createReadStream, createWriteStream, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pipeline } from "node:stream/promises";
import { Client } from "pg";
import { from as copyFrom, to as copyTo } from "pg-copy-streams";
import { databaseUrl } from "@/db/connection";
import { searchPath } from "@/db/search-path";
import { seconds } from "./bare-copy";

const schema = "ready_rows";
/** What each connection fills, in its order; about as much work for both. */
const lanes = [["jobs"], ["units", "part_lines", "job_cells", "batch_made"]] as const;

interface Ready {
  readonly table: string;
  readonly columns: string;
  readonly path: string;
}

/** @returns seconds, without those of writing the rows out */
export async function secondsOfReadyRows(): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-ready-"));
  const clients = await Promise.all(lanes.map(connected));
  const [main] = clients;
  try {
    if (main === undefined) throw new RangeError("lanes: there are none");
    await main.query(`create schema ${schema}`);
    const ready: Ready[][] = [];
    for (const tables of lanes) {
      ready.push([]);
      for (const table of tables) ready.at(-1)?.push(await writtenOut(main, table, folder));
    }
    return await seconds(async () => {
      await Promise.all(clients.map((client, lane) => fill(client, ready[lane] ?? [])));
      await refer(main);
    });
  } finally {
    await main?.query(`drop schema if exists ${schema} cascade`).catch(() => {});
    for (const client of clients) await client.end();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function connected(): Promise<Client> {
  const client = new Client({ connectionString: await databaseUrl() });
  await client.connect();
  await client.query(`set search_path = ${searchPath}; set maintenance_work_mem = '384MB'`);
  return client;
}

async function writtenOut(client: Client, table: string, folder: string): Promise<Ready> {
  const { rows } = await client.query<{ columns: string }>(
    `select string_agg(quote_ident(attname), ', ' order by attnum) as columns from pg_attribute
     where attrelid = $1::regclass and attnum > 0 and not attisdropped and attgenerated = ''`,
    [`public.${table}`],
  );
  const columns = rows[0]?.columns ?? "";
  const path = join(folder, table);
  await pipeline(
    client.query(copyTo(`copy (select ${columns} from public.${table}) to stdout (format binary)`)),
    createWriteStream(path),
  );
  return { table, columns, path };
}

async function fill(client: Client, ready: readonly Ready[]): Promise<void> {
  for (const { table, columns, path } of ready) {
    await client.query("begin"); // a table of the same transaction needs no log
    await client.query(
      `create table ${schema}.${table} (like public.${table} including defaults including constraints including generated including storage)`,
    );
    await pipeline(
      createReadStream(path, { highWaterMark: 1 << 20 }),
      client.query(copyFrom(`copy ${schema}.${table} (${columns}) from stdin (format binary)`)),
    );
    await client.query("commit");
    const { rows } = await client.query<{ definition: string }>(
      `select replace(pg_get_indexdef(indexrelid), ' ON public.', ' ON ${schema}.') as definition from pg_index where indrelid = $1::regclass`,
      [`public.${table}`],
    );
    for (const { definition } of rows) await client.query(definition);
    await client.query(`analyze ${schema}.${table}`);
  }
}

/** References among these tables, and to those of words and models. */
async function refer(client: Client): Promise<void> {
  const { rows } = await client.query<{ on: string; definition: string }>(
    `select c.relname as on, replace(pg_get_constraintdef(k.oid), ' public.', ' ') as definition
     from pg_constraint k join pg_class c on c.oid = k.conrelid where k.contype = 'f' and c.relnamespace = 'public'::regnamespace and c.relname = any ($1)`,
    [lanes.flat()],
  );
  await client.query(`set search_path = ${schema}, ${searchPath}`);
  for (const { on, definition } of rows) await client.query(`alter table ${schema}.${on} add ${definition}`);
}
