// A large file whose table holds nothing yet. What its rows must agree with can then be asked of all rows at once, and
// where all agree no row needs to be looked at, or written anew, by itself. Where any does not, the ordinary way says which.
import type { Transaction } from "@/db/database-types";
import { rowsOf, run } from "../staging/run";
import type { Filled, Staged, StagedKind } from "../staging/staged-kind";
import { readColumns, stagingColumns } from "../staging/staging-table";
import type { Lanes } from "./lanes";
import { isFirst } from "./rewrite-staged";

/** How rows of a kind are checked and stored where none is on file. */
export interface FirstLoad {
  /** Further staging columns, as DDL, that are made as rows arrive: all that whoever looks at them later relies on. */
  readonly derived: readonly string[];
  /** What is done to the staging table, as DDL, before it gets the columns that it lacks for the ordinary way. */
  readonly undo: readonly string[];
  /** @returns false where any row must be looked at by itself, or may have to */
  readonly agree: (tx: Transaction, staged: Staged, lanes: Lanes) => Promise<boolean>;
  readonly store: (tx: Transaction, staged: Filled, kind: StagedKind, batchId: number) => Promise<void>;
  /** SQL for the models that the rows concern, as `id`. */
  readonly models: (staged: Staged) => string;
}

/** Columns of a staging table that can be checked either way. */
export function eitherColumns(kind: StagedKind): readonly string[] {
  if (kind.first === undefined) return stagingColumns(kind);
  const isNew = `fate text generated always as (case when readable then 'new' end) stored`;
  return [...readColumns(kind), ...kind.first.derived, isNew];
}

/**
 * To be asked first of a table with such columns.
 * @returns whether all rows agree, and have their fate; else the table is made ready for the ordinary way
 */
export async function agreeAtOnce(tx: Transaction, staged: Staged, kind: StagedKind, lanes: Lanes): Promise<boolean> {
  const { first, target, derived } = kind;
  if (first === undefined || staged.either !== true) return false;
  if ((await isFirst(tx, staged, target.table)) && (await first.agree(tx, staged, lanes))) return true;
  await lanes.settled(); // whatever still reads the table would wait for this transaction from here on
  for (const change of ["drop column fate", "add column fate text", ...first.undo])
    await run(tx, `alter table ${staged.table} ${change}`);
  const all = derived.map((column) => `add column if not exists ${column}`);
  await run(tx, `alter table ${staged.table} ${all.join(", ")}`);
  return false;
}

export async function any(tx: Transaction, rows: string): Promise<boolean> {
  const [found] = await rowsOf<{ any: boolean }>(tx, `select exists (${rows}) as any`);
  return found?.any === true;
}
