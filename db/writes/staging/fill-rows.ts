import { sql } from "drizzle-orm";
import type { SourceItem, SourceRow } from "@/lib/intake/tables/source-row";
import { namedCells } from "./named-cells";
import { rowsOf, run } from "./run";
import { shownJson } from "./shown-json";
import type { StagedRows } from "./staged-kind";
import { storedSource } from "./stored-source";

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
    if (named.length === 0) return;
    const wanted = new Set(named.map(({ row }) => row));
    const found = `${table}_found`;
    await run(tx, `create temporary table ${found} (row integer, cells jsonb, source jsonb) on commit drop`);
    const lines: string[] = [];
    const send = async () => {
      const rows = `[${lines.splice(0).join(",")}]`;
      await tx.execute(
        sql`insert into ${sql.raw(found)} select * from jsonb_to_recordset(${rows}::jsonb) as v(row integer, cells jsonb, source jsonb)`,
      );
    };
    for await (const item of readAgain()) {
      if (item.kind !== "row" || !wanted.delete(item.row)) continue;
      lines.push(`{"row":${item.row},${inJson(header, item)}}`);
      if (lines.length === rowsAtOnce) await send();
      if (wanted.size === 0) break;
    }
    if (wanted.size > 0) throw new Error(`The file has changed since it was read: ${wanted.size} rows are gone.`);
    await send();
    await run(tx, `analyze ${found}`);
    await run(tx, `update ${table} r set cells = f.cells, source = f.source from ${found} f where f.row = r.row`);
    await run(tx, `drop table ${found}`);
  };
}

/** The cells by name as they are shown, and as they stood. */
function inJson(header: readonly string[], row: SourceRow): string {
  return `"cells":${shownJson(namedCells(header, row.cells))},"source":${shownJson(storedSource(row))}`;
}
