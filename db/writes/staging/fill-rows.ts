import { sql } from "drizzle-orm";
import type { StoredSource } from "@/db/schema/intake";
import type { SourceItem, SourceRow } from "@/lib/intake/tables/source-row";
import { namedCells } from "./named-cells";
import { rowsOf } from "./run";
import { shownJson } from "./shown-json";
import type { StagedRows } from "./staged-kind";

const rowsAtOnce = 2000;

/**
 * Most rows of a file go in and are never shown, so they are staged without what stands in them; the few that are held,
 * left out or compared get it by reading the file once more.
 * @param header  names of the file's columns, in its order
 */
export function rowFiller(
  table: string,
  header: readonly string[],
  readAgain: () => AsyncIterable<SourceItem>,
): StagedRows["fill"] {
  return async (tx, which) => {
    const named = await rowsOf<{ row: number }>(tx, `select row from ${table} r where r.source is null and ${which}`);
    const wanted = new Set(named.map(({ row }) => row));
    const found: SourceRow[] = [];
    const send = async () => {
      const rows = found.splice(0).map((row) => `{"row":${row.row},${inJson(header, row)}}`);
      await tx.execute(
        sql`update ${sql.raw(table)} r set cells = v.cells, source = v.source
          from jsonb_to_recordset(${`[${rows.join(",")}]`}::jsonb) as v(row integer, cells jsonb, source jsonb) where v.row = r.row`,
      );
    };
    if (wanted.size > 0)
      for await (const item of readAgain()) {
        if (item.kind !== "row" || !wanted.delete(item.row)) continue;
        found.push(item);
        if (found.length === rowsAtOnce || wanted.size === 0) await send();
        if (wanted.size === 0) break;
      }
    if (wanted.size > 0) throw new Error(`The file has changed since it was read: ${wanted.size} rows are gone.`);
  };
}

/** The cells by name as they are shown, and as they stood. */
export function inJson(header: readonly string[], { cells, marks }: SourceRow): string {
  const source: StoredSource = { cells, ...(marks === undefined ? {} : { marks: [...marks] }) };
  return `"cells":${shownJson(namedCells(header, cells))},"source":${shownJson(source)}`;
}
