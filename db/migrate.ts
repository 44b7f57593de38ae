import { setTimeout as pause } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { readMigrationFiles } from "drizzle-orm/migrator";
import { Client } from "pg";
import { grantAnew } from "./site-role/grant-anew";

/** Any number will do as long as it never changes: it names the lock among all locks of the database. */
export const migrationLock = 7_016_020_001;

const folder = fileURLToPath(new URL("./migrations", import.meta.url));

/** Whoever reads or writes is made to wait no longer than this behind a step that waits for them; then it steps back and tries again. */
const lockMs = 1000;
const betweenTriesMs = 250;
const triesForLocks = 240;

type Step = ReturnType<typeof readMigrationFiles>[number];

/**
 * Brings the database to the newest schema; does nothing when it is there. Each missing step is one transaction, so that
 * others, who may go on working, wait for the longest step and not for all of them; one that fails leaves the state of the
 * last release that it came to, and the next start goes on from there.
 * Processes that start together take turns, and the second finds nothing left to do.
 */
export async function migrateDatabase(url: string, migrationsFolder: string = folder): Promise<void> {
  const client = new Client({ connectionString: url, application_name: "ohmsworth migrate" });
  client.on("error", () => {}); // the statement in hand reports it
  await client.connect();
  try {
    const steps = readMigrationFiles({ migrationsFolder });
    if (await standsAt(client, steps.at(-1))) return;
    await client.query("select pg_advisory_lock($1)", [migrationLock]);
    await client.query("set client_min_messages = warning");
    const last = await lastTaken(client);
    for (const step of steps) if (step.folderMillis > last) await takeStep(client, step);
    if (migrationsFolder === folder) await grantAnew(client);
  } finally {
    await client.end(); // gives the lock back
  }
}

/** Asked first, and needs no more than to read: a login that may change no schema can still use one that is there. */
async function standsAt(client: Client, newest: Step | undefined): Promise<boolean> {
  const { rows: kept } = await client.query("select where to_regclass('drizzle.__drizzle_migrations') is not null");
  if (kept.length === 0 || newest === undefined) return false;
  const { rows } = await client.query("select from drizzle.__drizzle_migrations where created_at >= $1 limit 1", [
    newest.folderMillis,
  ]);
  return rows.length > 0;
}

/** The table is the one that drizzle's own migrator keeps, so that its tools go on reading it. */
async function lastTaken(client: Client): Promise<number> {
  await client.query(`create schema if not exists drizzle;
    create table if not exists drizzle.__drizzle_migrations (id serial primary key, hash text not null, created_at bigint)`);
  const { rows } = await client.query<{ last: number | null }>(
    "select max(created_at)::double precision as last from drizzle.__drizzle_migrations",
  );
  return rows[0]?.last ?? 0;
}

async function takeStep(client: Client, step: Step): Promise<void> {
  for (let attempt = 1; ; attempt++) {
    try {
      await inOneTransaction(client, step);
      return;
    } catch (error) {
      await client.query("rollback").catch(() => {});
      if (!isLockTimeout(error) || attempt === triesForLocks) throw error;
      await pause(betweenTriesMs);
    }
  }
}

async function inOneTransaction(client: Client, { sql, hash, folderMillis }: Step): Promise<void> {
  await client.query(`start transaction; set local lock_timeout = ${lockMs}`);
  for (const statement of sql) await client.query(statement);
  await client.query("insert into drizzle.__drizzle_migrations (hash, created_at) values ($1, $2)", [
    hash,
    folderMillis,
  ]);
  await client.query("commit");
}

function isLockTimeout(error: unknown): boolean {
  return error instanceof Error && "code" in error && error.code === "55P03";
}
