import { sql } from "drizzle-orm";
import { inTransaction } from "../in-transaction";

interface HeldRowsRequest {
  readonly batchId: number;
  readonly rows: readonly number[];
}

/** A person says that held rows are not to come in, and why. They stay on record. Gives how many rows that was. */
export async function leaveOutRows({
  batchId,
  rows,
  reason,
}: HeldRowsRequest & { readonly reason: string }): Promise<number> {
  if (reason.trim() === "") throw new RangeError("reason: is blank");
  return await setState({ batchId, rows }, sql`state = 'left_out', reason = ${reason.trim()}`, sql`state = 'held'`);
}

/** Rows that were left out wait again. */
export async function putBackRows(request: HeldRowsRequest): Promise<number> {
  return await setState(request, sql`state = 'held', reason = null`, sql`state = 'left_out'`);
}

async function setState(
  { batchId, rows }: HeldRowsRequest,
  change: ReturnType<typeof sql>,
  where: ReturnType<typeof sql>,
): Promise<number> {
  return await inTransaction(async (tx) => {
    const changed = await tx.rows(
      sql`update held_rows set ${change} where batch_id = ${batchId} and row in (select jsonb_array_elements_text(${JSON.stringify(rows)}::jsonb)::integer) and ${where} returning row`,
    );
    return changed.length;
  });
}
