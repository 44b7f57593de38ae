import { sql } from "drizzle-orm";
import type { Transaction } from "@/db/database-types";
import type { Cells } from "@/lib/intake/row-problems";
import { rowsOf } from "../staging/run";
import { shownJson } from "../staging/shown-json";
import type { Staged } from "../staging/staged-kind";

const rowsAtOnce = 2000;

/**
 * Rows that were staged without the parser have no cells in staging. Those that `condition` names, which are to be
 * compared or shown, get them from the file.
 * @returns whether the condition names any row, with cells or without
 */
export async function fillCells(tx: Transaction, { table, readCells }: Staged, condition: string): Promise<boolean> {
  if (readCells === undefined) return true;
  const named = await rowsOf<{ row: number; bare: boolean }>(
    tx,
    `select row, cells is null as bare from ${table} s where ${condition}`,
  );
  const bare = new Set(named.filter((each) => each.bare).map(({ row }) => row));
  const rows: { row: number; cells: Cells }[] = [];
  const send = async () => {
    const text = `[${rows.map(({ row, cells }) => `{"row":${row},"cells":${shownJson(cells)}}`).join(",")}]`;
    rows.length = 0;
    await tx.execute(
      sql`update ${sql.raw(table)} s set cells = v.cells from jsonb_to_recordset(${text}::jsonb) as v(row integer, cells jsonb) where v.row = s.row`,
    );
  };
  if (bare.size > 0)
    await readCells(bare, async (row, cells) => {
      rows.push({ row, cells });
      if (rows.length === rowsAtOnce) await send();
    });
  if (rows.length > 0) await send();
  return named.length > 0;
}
