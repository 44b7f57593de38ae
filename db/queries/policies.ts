import { eq, isNull, or } from "drizzle-orm";
import type { Policy } from "@/lib/domain/policy";
import type { Reader } from "../database-types";
import { policies } from "../schema/coverage";

export interface StoredPolicy {
  readonly policyId: number;
  readonly policy: Policy;
}

/** Every version that can bear on a maker's units: the maker's own, and those that cover any maker. */
export async function loadPolicies(db: Reader, makerId: number): Promise<StoredPolicy[]> {
  const rows = await db
    .select({ policyId: policies.policyId, document: policies.document })
    .from(policies)
    .where(or(eq(policies.makerId, makerId), isNull(policies.makerId)))
    .orderBy(policies.policyId);
  return rows.map((row) => ({ policyId: row.policyId, policy: row.document as Policy })); // parsed by the intake before it was stored
}

/** Every version of every policy. */
export async function loadAllPolicies(db: Reader): Promise<StoredPolicy[]> {
  const rows = await db
    .select({ policyId: policies.policyId, document: policies.document })
    .from(policies)
    .orderBy(policies.policyId);
  return rows.map((row) => ({ policyId: row.policyId, policy: row.document as Policy })); // parsed by the intake before it was stored
}
