import { isNull, sql } from "drizzle-orm";
import { earlierOf } from "@/lib/calendar/day";
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

/** Every version of every policy that decides; a company has tens of them. Retired ones are left out. */
export async function loadAllPolicies(db: Reader): Promise<StoredPolicy[]> {
  const { policyId, makerId, document, closedOn } = policies;
  const rows = await db
    .select({ policyId, makerId, document, closedOn })
    .from(policies)
    .where(isNull(policies.retiredAt))
    .orderBy(policyId);
  return rows.map((row) => ({ policyId: row.policyId, makerId: row.makerId, policy: closedPolicy(row) }));
}

/** Without a policy nothing is covered, and no claim was made: each names the one it rests on. */
export async function anyPolicy(db: Reader): Promise<boolean> {
  const [found] = await db.rows<{ any: boolean }>(sql`select exists (select from policies) as any`);
  return found?.any === true;
}

/** The document as approved, with the last sale date that a later version left it. */
export function closedPolicy({
  document,
  closedOn,
}: Pick<typeof policies.$inferSelect, "document" | "closedOn">): Policy {
  const policy = document as Policy; // parsed by the intake before it was stored
  if (closedOn === null) return policy;
  const { effectiveTo } = policy;
  return { ...policy, effectiveTo: effectiveTo === undefined ? closedOn : earlierOf(effectiveTo, closedOn) };
}
