import type { StoredSource } from "@/db/schema/intake";
import type { SourceRow } from "@/lib/intake/tables/source-row";

/** A row of somebody's file as it is kept: its cells as they stood, with what a spreadsheet stored in them. */
export function storedSource({ cells, marks }: SourceRow): StoredSource {
  return { cells, ...(marks === undefined ? {} : { marks: [...marks] }) };
}
