import { and, asc, count, desc, eq } from "drizzle-orm";
import type { Policy } from "@/lib/domain/policy";
import type { LooseDocument } from "@/lib/intake/policy-form/policy-form";
import type { Reader } from "../database-types";
import { claims } from "../schema/claims";
import { policies, policyDrafts } from "../schema/coverage";
import { closedPolicy } from "./policies";

/** One version as the shop sees it, retired ones too. */
export interface PolicyVersion {
  readonly policyId: number;
  readonly makerId: number | null;
  readonly policy: Policy;
  readonly publishedAt: string;
  /** Null where a file brought it. */
  readonly publishedBy: string | null;
  readonly batchId: number | null;
  readonly retired: { readonly at: string; readonly by: string; readonly reason: string } | undefined;
}

export interface PolicyDraft {
  readonly draftId: number;
  readonly basedOn: number | null;
  readonly document: LooseDocument;
  readonly savedAt: string;
  readonly savedBy: string;
  readonly revision: number;
}

export async function loadPolicyVersions(db: Reader): Promise<PolicyVersion[]> {
  const rows = await db.select().from(policies).orderBy(asc(policies.key), desc(policies.version));
  return rows.map(versionOf);
}

/** One version with the number of claims that it decided. */
export async function findPolicyVersion(
  db: Reader,
  key: string,
  version: number,
): Promise<(PolicyVersion & { readonly claims: number }) | undefined> {
  const [row] = await db
    .select()
    .from(policies)
    .where(and(eq(policies.key, key), eq(policies.version, version)));
  if (row === undefined) return undefined;
  const [counted] = await db.select({ claims: count() }).from(claims).where(eq(claims.policyId, row.policyId));
  return { ...versionOf(row), claims: counted?.claims ?? 0 };
}

export async function loadPolicyDrafts(db: Reader): Promise<PolicyDraft[]> {
  return (await db.select().from(policyDrafts).orderBy(desc(policyDrafts.savedAt))).map(draftOf);
}

export async function findPolicyDraft(db: Reader, draftId: number): Promise<PolicyDraft | undefined> {
  const [row] = await db.select().from(policyDrafts).where(eq(policyDrafts.draftId, draftId));
  return row && draftOf(row);
}

function versionOf(row: typeof policies.$inferSelect): PolicyVersion {
  const { policyId, makerId, publishedAt, publishedBy, batchId, retiredAt, retiredBy, retiredReason } = row;
  const retired =
    retiredAt === null || retiredBy === null || retiredReason === null
      ? undefined
      : { at: retiredAt, by: retiredBy, reason: retiredReason };
  return { policyId, makerId, policy: closedPolicy(row), publishedAt, publishedBy, batchId, retired };
}

function draftOf(row: typeof policyDrafts.$inferSelect): PolicyDraft {
  return { ...row, document: row.document as LooseDocument }; // written by save-policy-draft.ts
}
