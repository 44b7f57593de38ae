import { and, asc, eq } from "drizzle-orm";
import type { Reader } from "@/db/database-types";
import { heldRows, type StoredSource } from "@/db/schema/intake";
import type { CellProblem } from "@/lib/intake/parsed";

/** A row that waits for a person, as it came and with what was written instead so far. */
export interface HeldSource {
  readonly row: number;
  /** By column of the file. */
  readonly cells: Readonly<Record<string, string>>;
  /** The row of somebody's own file as it was read. */
  readonly source: StoredSource | null;
  readonly problems: readonly CellProblem[];
  readonly corrections: Readonly<Record<string, string>>;
}

export async function loadHeldSources(db: Reader, batchId: number): Promise<readonly HeldSource[]> {
  const { row, cells, source, problems, corrections } = heldRows;
  return await db
    .select({ row, cells, source, problems, corrections })
    .from(heldRows)
    .where(and(eq(heldRows.batchId, batchId), eq(heldRows.state, "held")))
    .orderBy(asc(heldRows.row));
}
