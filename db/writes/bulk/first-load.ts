// A large file whose table holds nothing yet. What its rows must agree with can then be asked of all rows at once, and
// where all agree no row needs to be looked at, or written anew, by itself. Where any does not, the ordinary way says which.
import type { Transaction } from "@/db/database-types";
import { rowsOf, run } from "../staging/run";
import type { Staged, StagedKind } from "../staging/staged-kind";
import { readColumns, stagingColumns } from "../staging/staging-table";
import { isFirst } from "./rewrite-staged";

/** How rows of a kind are checked and stored where none is on file. */
export interface FirstLoad {
  /** Further staging columns, as DDL, that are made as rows arrive. Those of the ordinary way come only if it must be gone. */
  readonly derived: readonly string[];
  /** @returns false where any row must be looked at by itself, or may have to */
  readonly agree: (tx: Transaction, staged: Staged) => Promise<boolean>;
  /** Gives the staging table the columns that whoever looks at it after the check relies on. */
  readonly settle: (tx: Transaction, staged: Staged) => Promise<void>;
  readonly store: (tx: Transaction, staged: Staged, kind: StagedKind, batchId: number) => Promise<void>;
  /** SQL for the models that the rows concern, as `id`. */
  readonly models: (staged: Staged) => string;
}

const fate = "fate_if_new";

/** Columns of a staging table that can be checked either way. */
export function eitherColumns(kind: StagedKind): readonly string[] {
  if (kind.first === undefined) return stagingColumns(kind);
  const isNew = `${fate} text generated always as (case when readable then 'new' end) stored`;
  return [...readColumns(kind), ...kind.first.derived, isNew];
}

/**
 * To be asked first of a table with such columns.
 * @returns whether all rows agree, and have their fate; else the table is made ready for the ordinary way
 */
export async function agreeAtOnce(tx: Transaction, staged: Staged, kind: StagedKind): Promise<boolean> {
  const { first, target, derived } = kind;
  if (first === undefined || staged.either !== true) return false;
  const { table } = staged;
  if ((await isFirst(tx, staged, target.table)) && (await first.agree(tx, staged))) {
    await run(tx, `alter table ${table} rename column ${fate} to fate`);
    await first.settle(tx, staged);
    return true;
  }
  const missing = ["fate text", ...derived.filter((column) => !first.derived.includes(column))];
  await run(
    tx,
    `alter table ${table} drop column ${fate}, ${missing.map((column) => `add column ${column}`).join(", ")}`,
  );
  return false;
}

export async function any(tx: Transaction, rows: string): Promise<boolean> {
  const [found] = await rowsOf<{ any: boolean }>(tx, `select exists (${rows}) as any`);
  return found?.any === true;
}
