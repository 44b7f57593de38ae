import { randomInt } from "node:crypto";
import { Client } from "pg";
import { databaseUrl } from "@/db/connection";
import { inTransaction } from "@/db/in-transaction";
import { stagingSchema } from "@/db/search-path";
import { removeFilled } from "../bulk/remove-filled";
import type { StagedKind } from "./staged-kind";

/** Any numbers will do as long as they never change: they name locks among all locks of the database. */
const stagingLocks = 7_016_021;

export interface Staging {
  /** Makes an empty staging table that nobody else uses. */
  readonly create: (columns: readonly string[]) => Promise<string>;
}

/**
 * Runs `work` with staging tables of its own, and removes them however `work` ends.
 * Locks of a connection of its own say that the tables are in use; when the process dies the locks go with the
 * connection, and the next load removes the tables.
 */
export async function withStaging<R>(work: (staging: Staging) => Promise<R>): Promise<R> {
  const keeper = new Client({
    connectionString: await databaseUrl(),
    application_name: "ohmsworth staging",
    keepAlive: true,
  });
  keeper.on("error", () => {}); // the next statement reports it
  await keeper.connect();
  const tables: string[] = [];
  const create = async (columns: readonly string[]) => {
    const id = randomInt(1, 2 ** 31 - 1);
    const table = `staging_${id}`;
    await keeper.query("select pg_advisory_lock($1, $2)", [stagingLocks, id]);
    tables.push(table);
    await keeper.query(`create unlogged table ${stagingSchema}.${table} (${columns.join(", ")})`);
    return table;
  };
  try {
    await removeLeftovers(keeper);
    await inTransaction(removeFilled);
    return await work({ create });
  } finally {
    for (const table of tables) await drop(keeper, table).catch(() => {}); // a lost connection leaves it to the next load
    await keeper.end().catch(() => {});
  }
}

/** The columns that every kind has, and the kind's own. */
export function stagingColumns(kind: StagedKind): readonly string[] {
  return [...readColumns(kind), "fate text", ...kind.derived];
}

/** The columns that are filled as rows are read. */
export function readColumns({ columns }: StagedKind): readonly string[] {
  return [
    "row integer not null",
    "cells jsonb",
    "problems jsonb",
    "readable boolean not null",
    ...columns.map(({ name, type }) => `${name} ${type}`),
  ];
}

/** Drops the table and those that were gathered from it, whose names begin with its own. */
async function drop(keeper: Client, table: string): Promise<void> {
  const { rows } = await keeper.query<{ name: string }>(
    `select relname as name from pg_class where relname ~ '^${table}(_|$)' and relkind = 'r' and relnamespace = '${stagingSchema}'::regnamespace`,
  );
  for (const { name } of rows) await keeper.query(`drop table if exists ${stagingSchema}.${name}`);
}

async function removeLeftovers(keeper: Client): Promise<void> {
  const { rows } = await keeper.query<{ id: number }>(
    `select distinct split_part(relname, '_', 2)::integer as id from pg_class
     where relname ~ '^staging_[0-9]+(_|$)' and relkind = 'r' and relnamespace = '${stagingSchema}'::regnamespace and pg_has_role(relowner, 'usage')`,
  );
  for (const { id } of rows) {
    const lock = await keeper.query<{ free: boolean }>("select pg_try_advisory_lock($1, $2) as free", [
      stagingLocks,
      id,
    ]);
    if (lock.rows[0]?.free !== true) continue;
    await drop(keeper, `staging_${id}`);
    await keeper.query("select pg_advisory_unlock($1, $2)", [stagingLocks, id]);
  }
}
