import { randomInt } from "node:crypto";
import { Client } from "pg";
import { databaseUrl } from "@/db/connection";
import type { StagedKind } from "./staged-kind";

/** Any numbers will do as long as they never change: they name locks among all locks of the database. */
const stagingLocks = 7_016_021;

/**
 * Runs `work` with an empty staging table that nobody else uses, and removes the table however `work` ends.
 * A lock of a connection of its own says that the table is in use; when the process dies the lock goes with the
 * connection, and the next load removes the table.
 */
export async function withStagingTable<R>(kind: StagedKind, work: (table: string) => Promise<R>): Promise<R> {
  const keeper = new Client({
    connectionString: await databaseUrl(),
    application_name: "ohmsworth staging",
    keepAlive: true,
  });
  keeper.on("error", () => {}); // the next statement reports it
  await keeper.connect();
  try {
    await removeLeftovers(keeper);
    const id = randomInt(1, 2 ** 31 - 1);
    const table = `staging_${id}`;
    await keeper.query("select pg_advisory_lock($1, $2)", [stagingLocks, id]);
    await keeper.query(`create unlogged table ${table} (${ddl(kind)})`);
    try {
      return await work(table);
    } finally {
      await keeper.query(`drop table if exists ${table}`).catch(() => {}); // a lost connection leaves it to the next load
    }
  } finally {
    await keeper.end().catch(() => {});
  }
}

function ddl(kind: StagedKind): string {
  return [
    "row integer not null",
    "cells jsonb not null",
    "problems jsonb",
    "readable boolean not null",
    "fate text",
    ...kind.columns.map(({ name, type }) => `${name} ${type}`),
    ...kind.derived,
  ].join(", ");
}

async function removeLeftovers(keeper: Client): Promise<void> {
  const { rows } = await keeper.query<{ table: string }>(
    `select relname as table from pg_class where relname ~ '^staging_[0-9]+$' and relkind = 'r' and relnamespace = current_schema()::regnamespace`,
  );
  for (const { table } of rows) {
    const id = Number(table.slice("staging_".length));
    const lock = await keeper.query<{ free: boolean }>("select pg_try_advisory_lock($1, $2) as free", [
      stagingLocks,
      id,
    ]);
    if (lock.rows[0]?.free !== true) continue;
    await keeper.query(`drop table if exists ${table}`);
    await keeper.query("select pg_advisory_unlock($1, $2)", [stagingLocks, id]);
  }
}
