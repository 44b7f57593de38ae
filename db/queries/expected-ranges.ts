import { eq } from "drizzle-orm";
import type { ExpectedRange, SourceMark } from "@/lib/domain/reading";
import type { Reader } from "../database-types";
import { expectedRanges } from "../schema/catalogue";

/** What the model sheet expects of each check on one model. */
export async function loadExpectedRanges(db: Reader, modelId: number): Promise<ExpectedRange[]> {
  const rows = await db.select().from(expectedRanges).where(eq(expectedRanges.modelId, modelId));
  return rows.map(rangeOf);
}

/** The same of every model, by its id. */
export async function loadAllExpectedRanges(db: Reader): Promise<ReadonlyMap<number, readonly ExpectedRange[]>> {
  const byModel = new Map<number, ExpectedRange[]>();
  for (const row of await db.select().from(expectedRanges)) {
    byModel.set(row.modelId, [...(byModel.get(row.modelId) ?? []), rangeOf(row)]);
  }
  return byModel;
}

function rangeOf(row: typeof expectedRanges.$inferSelect): ExpectedRange {
  return {
    check: row.check,
    low: row.low ?? undefined,
    high: row.high ?? undefined,
    unit: row.unit,
    condition: row.condition === "" ? undefined : row.condition,
    source: row.source,
    mark: row.mark as SourceMark, // the intake stores no other words
  };
}
