import { eq } from "drizzle-orm";
import type { Transaction } from "../../database-types";
import { remittances } from "../../schema/money";

export type RemittanceRow = typeof remittances.$inferSelect;

/** A list that nobody else can post or change until this transaction ends. */
export async function lockRemittance(tx: Transaction, remittanceId: number): Promise<RemittanceRow | undefined> {
  const [row] = await tx.select().from(remittances).where(eq(remittances.remittanceId, remittanceId)).for("update");
  return row;
}
