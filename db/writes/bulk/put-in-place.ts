import { setTimeout as pause } from "node:timers/promises";
import type { Transaction } from "@/db/database-types";
import { searchPath } from "@/db/search-path";
import { rowsOf, run } from "../staging/run";
import { fillingSchema } from "./filling";

interface Constraint {
  readonly [column: string]: unknown;
  readonly on: string;
  readonly name: string;
  readonly definition: string;
}

/** A reader is made to wait no longer than this for the tables, and then again only after a while. */
const lockMs = 500;
const triesForLocks = 120;
const betweenTriesMs = 250;

/** Gives a filled table the indexes of the empty one of the same name. */
export async function indexFilled(tx: Transaction, table: string): Promise<void> {
  for (const definition of await indexesOf(tx, table)) await run(tx, definition);
  await run(tx, `analyze ${fillingSchema}.${table}`);
}

/**
 * Gives the filled tables the keys and references of the empty ones, then takes their places. Readers are shut out only
 * for the last step, which moves names and no rows.
 */
export async function putInPlace(tx: Transaction, tables: readonly string[]): Promise<void> {
  for (const table of tables)
    for (const { name, definition } of await keysOf(tx, table))
      await run(tx, `alter table ${fillingSchema}.${table} add constraint ${quoted(name)} ${definition}`);
  for (const table of tables)
    for (const { name, definition } of await referencesOf(tx, table))
      await run(tx, `alter table ${fillingSchema}.${table} add constraint ${quoted(name)} ${definition}`);
  const references = await referencesTo(tx, tables);
  await lockAll(tx, [...new Set([...tables.map((table) => `public.${table}`), ...references.map(({ on }) => on)])]);
  for (const table of tables) for (const statement of await grantsOf(tx, table)) await run(tx, statement);
  for (const table of tables.toReversed()) await run(tx, `drop table public.${table} cascade`);
  for (const table of tables) await run(tx, `alter table ${fillingSchema}.${table} set schema public`);
  for (const { on, name, definition } of references)
    await run(tx, `alter table ${on} add constraint ${quoted(name)} ${definition}`);
  await run(tx, `set local search_path = ${searchPath}; drop schema ${fillingSchema}`);
}

/** Definitions name other tables as the search path finds them: the filled ones, where there are such. */
async function referencesOf(tx: Transaction, table: string): Promise<Constraint[]> {
  return await rowsOf<Constraint>(
    tx,
    `select conrelid::regclass::text as on, conname as name, replace(pg_get_constraintdef(oid), ' public.', ' ') as definition from pg_constraint
     where conrelid = 'public.${table}'::regclass and contype = 'f' order by conname`,
  );
}

/** Their indexes are there already. */
async function keysOf(tx: Transaction, table: string): Promise<Constraint[]> {
  return await rowsOf<Constraint>(
    tx,
    `select conrelid::regclass::text as on, conname as name, format('%s using index %I', case contype when 'p' then 'primary key' else 'unique' end, conname) as definition
     from pg_constraint where conrelid = 'public.${table}'::regclass and contype in ('p', 'u') order by contype, conname`,
  );
}

/** Those of keys too, which are made of their indexes in the end. */
export async function indexesOf(tx: Transaction, table: string): Promise<readonly string[]> {
  const found = await rowsOf<{ definition: string }>(
    tx,
    `select regexp_replace(pg_get_indexdef(indexrelid), ' ON public\\.', ' ON ${fillingSchema}.') as definition from pg_index i
     where indrelid = 'public.${table}'::regclass order by indexrelid`,
  );
  return found.map(({ definition }) => definition);
}

/** Whoever may read or change the empty table may do the same with the filled one. */
async function grantsOf(tx: Transaction, table: string): Promise<readonly string[]> {
  const found = await rowsOf<{ statement: string }>(
    tx,
    `select format('grant %s on ${fillingSchema}.${table} to %s%s', string_agg(privilege_type, ', '),
       case when grantee = 0 then 'public' else quote_ident(pg_get_userbyid(grantee)) end, case when is_grantable then ' with grant option' else '' end) as statement
     from pg_class c cross join aclexplode(c.relacl) where c.oid = 'public.${table}'::regclass and grantee <> c.relowner group by grantee, is_grantable`,
  );
  return found.map(({ statement }) => statement);
}

/** References to the tables from others, which are as empty. */
async function referencesTo(tx: Transaction, tables: readonly string[]): Promise<Constraint[]> {
  const these = tables.map((table) => `'public.${table}'::regclass`).join(", ");
  return await rowsOf<Constraint>(
    tx,
    `select quote_ident(n.nspname) || '.' || quote_ident(r.relname) as on, c.conname as name, replace(pg_get_constraintdef(c.oid), ' public.', ' ') as definition
     from pg_constraint c join pg_class r on r.oid = c.conrelid join pg_namespace n on n.oid = r.relnamespace
     where c.contype = 'f' and c.confrelid in (${these}) and c.conrelid not in (${these}) and n.nspname <> '${fillingSchema}' order by 1, 2`,
  );
}

/**
 * Where new tables are not in the log, the commit waits until they are on the disk, and whoever reads waits for the
 * commit. So they are written first, while nobody is shut out yet. Those that were filled in transactions of their own are
 * on the disk already.
 */
export async function writeOut(tx: Transaction): Promise<void> {
  const [found] = await rowsOf<{ may: boolean }>(
    tx,
    `select current_setting('wal_level') = 'minimal' and pg_has_role('pg_checkpoint', 'usage') as may`,
  );
  if (found?.may === true) await run(tx, "checkpoint");
}

/** All at once or none: a wait for one while others are held could shut readers out, or be a deadlock. */
async function lockAll(tx: Transaction, tables: readonly string[]): Promise<void> {
  for (let tried = 1; ; tried++) {
    try {
      await tx.transaction(async (step) => {
        await run(step as Transaction, `set local lock_timeout = '${lockMs}ms'`); // a savepoint has the same methods
        await run(step as Transaction, `lock table ${tables.join(", ")} in access exclusive mode`);
      });
      await run(tx, "set local lock_timeout = 0");
      return;
    } catch (error) {
      if (!isLockTimeout(error) || tried === triesForLocks) throw error;
      await pause(betweenTriesMs);
    }
  }
}

function isLockTimeout(error: unknown): boolean {
  for (let each = error; each instanceof Error; each = each.cause)
    if ("code" in each && each.code === "55P03") return true;
  return false;
}

function quoted(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}
