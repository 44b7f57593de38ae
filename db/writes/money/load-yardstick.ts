import { sql } from "drizzle-orm";
import { evidenceOfLeaks } from "@/lib/claims/leaks/evidence-of-leaks";
import type { ExpectedRange } from "@/lib/domain/reading";
import type { Reader } from "../../database-types";
import { loadAllExpectedRanges, loadExpectedRanges } from "../../queries/expected-ranges";
import { loadAllPolicies } from "../../queries/policies";
import type { Yardstick } from "./judge-unclaimed";

/** From this many models on, the ranges of all of them are one read and not more. */
const fewModels = 20;

/** @param unitIds  whose models' expected ranges are read; those of all where absent */
export async function loadYardstick(db: Reader, unitIds?: readonly string[]): Promise<Yardstick> {
  const policies = await loadAllPolicies(db);
  return { policies, ranges: await loadRanges(db, unitIds), checkEvidence: evidenceOfLeaks() };
}

async function loadRanges(db: Reader, unitIds: readonly string[] | undefined): Promise<Yardstick["ranges"]> {
  if (unitIds === undefined) return await loadAllExpectedRanges(db);
  const models = await db.rows<{ model_id: number }>(sql`
    select distinct model_id from units where unit_id = any(${sql.param([...unitIds])}::bigint[])`);
  if (models.length > fewModels) return await loadAllExpectedRanges(db);
  const ranges = new Map<number, readonly ExpectedRange[]>();
  for (const { model_id } of models) ranges.set(model_id, await loadExpectedRanges(db, model_id));
  return ranges;
}
