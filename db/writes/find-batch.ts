import { and, eq } from "drizzle-orm";
import type { FileKind } from "@/lib/intake/file-kinds";
import type { Reader } from "../database-types";
import { batches } from "../schema/intake";
import type { LoadResult } from "./load-result";

/** The batch that the same bytes made and that has not been taken back. */
export async function findBatch(
  db: Reader,
  kind: FileKind,
  sha256: string,
): Promise<(LoadResult & { kind: "loaded before" }) | undefined> {
  const [found] = await db
    .select()
    .from(batches)
    .where(and(eq(batches.kind, kind), eq(batches.fileSha256, sha256), eq(batches.state, "added")));
  if (found === undefined) return undefined;
  return {
    kind: "loaded before",
    batchId: found.batchId,
    fileName: found.fileName,
    addedAt: found.addedAt,
    rows: found.rowsTotal,
  };
}
