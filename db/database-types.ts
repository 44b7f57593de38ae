import type { ExtractTablesWithRelations, SQL } from "drizzle-orm";
import type { NodePgQueryResultHKT } from "drizzle-orm/node-postgres";
import type { PgTransaction } from "drizzle-orm/pg-core";

/** Queries name their tables themselves: drizzle's own way through relations is not used, and costs at every transaction. */
type NoSchema = Record<string, never>;

/** What a change may use, inside `inTransaction` only. Its own `transaction` makes a savepoint. */
export type Transaction = PgTransaction<NodePgQueryResultHKT, NoSchema, ExtractTablesWithRelations<NoSchema>> & {
  /** SQL written out. `bigint`, `numeric`, days and instants come as text, and the columns are as the caller states. */
  rows<Row extends Record<string, unknown>>(statement: SQL): Promise<Row[]>;
};

/** What a read may use: a part of the above, so that a query serves a page and, inside a change, sees that change's own rows. */
export type Reader = Pick<
  Transaction,
  "select" | "selectDistinct" | "selectDistinctOn" | "with" | "$with" | "$count" | "rows"
>;
