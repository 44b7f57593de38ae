import { sql } from "drizzle-orm";
import type { Transaction } from "@/db/database-types";

/** Runs SQL that is made of the program's own words and numbers only; what files say is always in staging rows. */
export async function run(tx: Transaction, ...statements: readonly string[]): Promise<void> {
  for (const statement of statements) await tx.execute(sql.raw(statement));
}

export async function rowsOf<Row extends Record<string, unknown>>(tx: Transaction, statement: string): Promise<Row[]> {
  return await tx.rows<Row>(sql.raw(statement));
}
