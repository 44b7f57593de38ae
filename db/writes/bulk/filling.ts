// A first load fills empty tables. Rows that come in one by one into indexed tables cost ten times what they cost in a
// bare one, so such tables are built anew beside the empty ones and put in their place at the end, in the load's own
// transaction. Until then readers see, undisturbed, what was there before: nothing. Where rows go in as they were staged,
// their tables are filled and indexed in transactions of their own, several at once; what a load that breaks off leaves
// of them is removed by the next one.
import type { Transaction } from "@/db/database-types";
import { searchPath } from "@/db/search-path";
import { countTables } from "../refresh-counts";
import { rowsOf, run } from "../staging/run";
import type { StagedFile } from "../staging/staged-file";
import type { Lanes } from "./lanes";
import { indexesOf, indexFilled, putInPlace, writeOut } from "./put-in-place";

/** A statement that adds rows to a table. Where a load of rows that agree fills the table, it must rest on committed rows only. */
export interface Rows {
  readonly table: string;
  readonly statement: string;
}

export interface Filling {
  /** Empty where rows go into the tables as they stand. */
  readonly tables: readonly string[];
  /** Adds rows: at once to tables that are filled beside the load, and `meanwhile`, one after the other, to those that stand. */
  readonly insert: (each: readonly Rows[], meanwhile?: () => Promise<void>) => Promise<void>;
  /** Makes keys and indexes. To be called once the rows are there, before anything is counted from them. */
  readonly ready: () => Promise<void>;
  /** Makes references, and puts the tables in their places. The last thing that a load does. */
  readonly finish: () => Promise<void>;
}

/** Fewer rows are quicker added to the tables as they stand. */
const enoughRows = 20_000;
/** Unqualified names mean tables of this schema first, so that everything said of a table is said of the one that is being filled. */
export const fillingSchema = "being_filled";

const ofJobs = ["units", "jobs", "job_cells", "suggested_callbacks"];

/** Which tables a load of such records fills, in the order in which they refer to each other. */
const filledBy: Readonly<Partial<Record<string, readonly string[]>>> = {
  units: ["units"],
  jobs: ofJobs,
  "part-lines": ["part_lines"],
  "jobs and part-lines": [...ofJobs, "part_lines"],
};

/** Begins to fill tables that are empty, where the load is large and the database lets us. */
export async function beginFilling(tx: Transaction, file: StagedFile, rows: number, lanes: Lanes): Promise<Filling> {
  const records = file.parts.map(({ kind }) => kind.kind).join(" and ");
  const wanted = rows >= enoughRows ? (filledBy[records] ?? []) : [];
  const tables: string[] = [];
  for (const table of wanted) {
    if (await canBeReplaced(tx, table)) tables.push(table);
    else tables.length = 0; // what it is given refers to the tables before it, which have to stand as well
  }
  const agreed = file.parts.every(({ staged }) => staged.agreed === true);
  const allNew = wanted.every((table) => isCount(table) || tables.includes(table)); // else counts rest on rows of this transaction
  const beside = tables.filter((table) => agreed && (allNew || !isCount(table)));
  const here = tables.filter((table) => !beside.includes(table));
  if (tables.length > 0) {
    await lanes.run(`drop schema if exists ${fillingSchema} cascade`, `create schema ${fillingSchema}`);
    for (const table of here) await run(tx, likeEmpty(table));
    await run(tx, `${namesMeanFilled}; set local work_mem = '192MB'; set local maintenance_work_mem = '384MB'`);
  }
  const index = async (which: readonly string[]) => {
    for (const table of which) await indexFilled(tx, table);
  };
  return {
    tables,
    insert: async (each, meanwhile) => {
      const bare: (Rows & Indexes)[] = [];
      for (const rows of each)
        if (beside.includes(rows.table)) bare.push({ ...rows, indexes: await indexesOf(tx, rows.table) });
      const filled = Promise.all(bare.map((rows) => fillBeside(lanes, rows)));
      filled.catch(() => {}); // it is waited for below, unless something else fails before
      await insertInTurn(
        tx,
        each.filter(({ table }) => !beside.includes(table)),
      );
      await meanwhile?.();
      await filled;
    },
    ready: () => index(here.filter((table) => !isCount(table))),
    finish: async () => {
      await index(here.filter(isCount));
      await lanes.settled();
      if (here.length > 0) await writeOut(tx);
      if (tables.length > 0) await putInPlace(tx, tables);
    },
  };
}

interface Indexes {
  readonly indexes: readonly string[];
}

export async function insertInTurn(tx: Transaction, each: readonly Rows[]): Promise<void> {
  for (const { statement } of each) await run(tx, statement);
}

/** Fills a table that comes to be with its rows, which then need no log. Its indexes are made while others read it. */
async function fillBeside(lanes: Lanes, { table, statement, indexes }: Rows & Indexes): Promise<void> {
  await lanes.run(likeEmpty(table), namesMeanFilled, statement);
  for (const definition of [...indexes, `analyze ${fillingSchema}.${table}`]) lanes.runLater(definition);
}

const namesMeanFilled = `set local search_path = ${fillingSchema}, ${searchPath}`;

function likeEmpty(table: string): string {
  return `create table ${fillingSchema}.${table} (like public.${table} including defaults including constraints including generated including storage including comments)`;
}

/** Counts are filled last, from the rows. */
function isCount(table: string): boolean {
  return countTables.some((each) => each === table);
}

/**
 * Empty, ours to replace, and with nothing on it that a copy would lack. From the answer on nobody else writes to it.
 */
async function canBeReplaced(tx: Transaction, table: string): Promise<boolean> {
  const [found] = await rowsOf<{ plain: boolean }>(
    tx,
    `select c.relkind = 'r' and n.nspname = 'public' and not c.relrowsecurity
       and pg_has_role(c.relowner, 'usage') and has_database_privilege(current_database(), 'create')
       and not exists (select from pg_trigger t where t.tgrelid = c.oid and not t.tgisinternal)
       and not exists (select from pg_depend d where d.refobjid = c.oid and d.classid = 'pg_rewrite'::regclass)
       and not exists (select from pg_inherits i where c.oid in (i.inhrelid, i.inhparent))
       and not exists (select from pg_publication_rel p where p.prrelid = c.oid)
       and not exists (select from pg_attribute a where a.attrelid = c.oid and (a.attidentity <> '' or a.attacl is not null)) as plain
     from pg_class c join pg_namespace n on n.oid = c.relnamespace where c.oid = '${table}'::regclass`,
  );
  if (found?.plain !== true || !(await isEmpty(tx, table))) return false;
  await run(tx, `lock table ${table} in share row exclusive mode`);
  return await isEmpty(tx, table);
}

async function isEmpty(tx: Transaction, table: string): Promise<boolean> {
  const [found] = await rowsOf<{ any: boolean }>(tx, `select exists (select from ${table}) as any`);
  return found?.any === false;
}
