import type { Policy } from "@/lib/domain/policy";
import type { Reader } from "../database-types";
import { policies } from "../schema/coverage";

export interface StoredPolicy {
  readonly policyId: number;
  /** Null where it covers any maker. */
  readonly makerId: number | null;
  readonly policy: Policy;
}

/** Every version that can bear on a maker's units: the maker's own, and those that cover any maker. */
export async function loadPolicies(db: Reader, makerId: number): Promise<StoredPolicy[]> {
  return (await loadAllPolicies(db)).filter((stored) => stored.makerId === makerId || stored.makerId === null);
}

/** Every version of every policy; a company has tens of them. */
export async function loadAllPolicies(db: Reader): Promise<StoredPolicy[]> {
  const { policyId, makerId, document } = policies;
  const rows = await db.select({ policyId, makerId, document }).from(policies).orderBy(policyId);
  return rows.map((row) => ({ ...row, policy: row.document as Policy })); // parsed by the intake before it was stored
}
