import { type SQL, sql } from "drizzle-orm";
import { drizzle } from "drizzle-orm/pg-proxy";
import { readOnly } from "./client";
import { inTransaction } from "./in-transaction";

/**
 * The database as the library for signing in wants it: single statements. Each runs as every other does here, reads in
 * `readOnly` and changes in `inTransaction`, so that lost connections are met in one way.
 */
export const signInDatabase = drizzle(async (text, values, method) => {
  const statement = boundStatement(text, values);
  const answered = text.startsWith("select")
    ? await readOnly(async (db) => ({ rows: await db.rows<Record<string, unknown>>(statement), rowCount: 0 }))
    : await inTransaction((tx) => tx.execute(statement));
  const { rows, rowCount } = answered;
  // Columns of one table, each named once, so that their order is that of the statement.
  return { rows: method === "all" ? rows.map((row) => Object.values(row)) : rows, rowCount: rowCount ?? 0 };
});

/** The statement with its values bound again where $1, $2 … stand; drizzle writes them in order, each once. */
function boundStatement(text: string, values: readonly unknown[]): SQL {
  const pieces = text.split(/\$\d+/);
  return sql.join(
    pieces.flatMap((piece, at) => (at === 0 ? [sql.raw(piece)] : [sql`${values[at - 1]}`, sql.raw(piece)])),
  );
}
