import { sql } from "drizzle-orm";
import type { ExpectedRange } from "@/lib/domain/reading";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { markUnitsOfModels, settleUnclaimed } from "../money/units-to-judge";

export interface NewOwnRange {
  readonly modelId: number;
  readonly range: ExpectedRange;
  readonly by: string;
  readonly reason: string;
}

/** Sets what is expected of a check on a model, before whatever files say; what stood before is lifted and kept. */
export async function setOwnRange({ modelId, range, by, reason }: NewOwnRange): Promise<"set" | "no such model"> {
  const condition = range.condition ?? "";
  const outcome = await inTransaction<"set" | "no such model">(async (tx) => {
    const models = await tx.rows(sql`select 1 from models where model_id = ${modelId} for share`);
    if (models.length === 0) return "no such model";
    // Two people at once take turns, so that the later finds what the earlier set.
    await tx.rows(
      sql`select pg_advisory_xact_lock(hashtextextended(${`range ${modelId} ${range.check} ${condition}`}, 0))::text`,
    );
    await tx.execute(sql`
      update own_ranges set lifted_at = greatest(now(), at), lifted_by = ${by}
      where model_id = ${modelId} and check_key = ${range.check} and condition = ${condition} and lifted_at is null`);
    await tx.execute(sql`
      insert into own_ranges (model_id, check_key, condition, low, high, unit, source, mark, at, by, reason)
      values (${modelId}, ${range.check}, ${condition}, ${range.low ?? null}, ${range.high ?? null}, ${range.unit}, ${range.source}, ${range.mark}, now(), ${by}, ${reason})`);
    await markUnitsOfModels(tx, [modelId]);
    return "set";
  });
  await settleUnclaimed();
  return outcome;
}

/** From then on what files say holds again; false where it was lifted already. */
export async function liftOwnRange(rangeId: number, by: string): Promise<boolean> {
  const wasLifted = await inTransaction(async (tx: Transaction) => {
    const [lifted] = await tx.rows<{ modelId: number }>(sql`
      update own_ranges set lifted_at = greatest(now(), at), lifted_by = ${by} where range_id = ${rangeId} and lifted_at is null
      returning model_id as "modelId"`);
    if (lifted === undefined) return false;
    await markUnitsOfModels(tx, [lifted.modelId]);
    return true;
  });
  await settleUnclaimed();
  return wasLifted;
}
