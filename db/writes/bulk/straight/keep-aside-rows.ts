import { sql } from "drizzle-orm";
import type { Transaction } from "@/db/database-types";
import { shownJson } from "../../staging/shown-json";
import type { AsideRow } from "./straight-reader";

const rowsAtOnce = 500;

/** Keeps the rows that could not be read with the load. */
export async function keepAsideRows(tx: Transaction, batchId: number, aside: readonly AsideRow[]): Promise<void> {
  for (let from = 0; from < aside.length; from += rowsAtOnce) {
    const text = aside
      .slice(from, from + rowsAtOnce)
      .map(({ row, cells, problems }) => `{"row":${row},"cells":${shownJson(cells)},"problems":${shownJson(problems)}}`)
      .join(",");
    await tx.rows(sql`
      insert into held_rows (batch_id, row, cells, problems)
      select ${batchId}::bigint, row, cells, problems from jsonb_to_recordset(${`[${text}]`}::jsonb) as v(row integer, cells jsonb, problems jsonb)`);
  }
}
