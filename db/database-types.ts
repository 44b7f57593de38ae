import type { ExtractTablesWithRelations, SQL } from "drizzle-orm";
import type { NodePgQueryResultHKT } from "drizzle-orm/node-postgres";
import type { PgDatabase, PgQueryResultHKT, PgTransaction } from "drizzle-orm/pg-core";
import type * as schema from "./schema/all";

export type Schema = typeof schema;
type Relations = ExtractTablesWithRelations<Schema>;

/**
 * What a read may use. It is the part that both drivers share, so that a query serves a page and, inside a change,
 * sees that change's own rows.
 */
export type Reader = Pick<
  PgDatabase<PgQueryResultHKT, Schema, Relations>,
  "select" | "selectDistinct" | "selectDistinctOn" | "$with" | "$count" | "query"
> &
  WrittenOut & {
    with(
      ...queries: Parameters<PgDatabase<PgQueryResultHKT, Schema, Relations>["with"]>
    ): Pick<
      ReturnType<PgDatabase<PgQueryResultHKT, Schema, Relations>["with"]>,
      "select" | "selectDistinct" | "selectDistinctOn"
    >;
  };

/** What a change may use, inside `inTransaction` only. Its own `transaction` makes a savepoint. */
export type Transaction = PgTransaction<NodePgQueryResultHKT, Schema, Relations> & WrittenOut;

/** For SQL written out: the drivers' `execute` differ in what they return, this does not. `bigint`, `numeric`, days and instants come as text. */
type WrittenOut = {
  rows<Row extends Record<string, unknown>>(statement: SQL): Promise<Row[]>;
};
