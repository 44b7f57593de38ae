import { createHash } from "node:crypto";
import { and, eq, isNull, sql } from "drizzle-orm";
import { normalised } from "@/lib/domain/normalised";
import type { Policy } from "@/lib/domain/policy";
import type { PolicyProblem } from "@/lib/intake/parse-policy";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { placeDraft } from "../../queries/place-draft";
import { policies, policyDrafts } from "../../schema/coverage";
import { markAllUnits, settleUnclaimed } from "../money/units-to-judge";

export interface Publishing {
  readonly draftId: number;
  /** The saving that was reviewed: what was changed since is not published unseen. */
  readonly revision: number;
  readonly by: string;
}

export type Published =
  | { readonly kind: "published"; readonly key: string; readonly version: number }
  | { readonly kind: "changed since"; readonly by: string }
  | { readonly kind: "no such draft" }
  | { readonly kind: "problems"; readonly problems: readonly PolicyProblem[] }
  | { readonly kind: "overlaps"; readonly sentence: string };

/** One lock for all that publish or retire, so that two versions cannot both find the same dates free. */
const publishingLock = 5_201;

/** A draft becomes the next version of its policy, and an open version before it is closed, in one transaction. */
export async function publishPolicy({ draftId, revision, by }: Publishing): Promise<Published> {
  if (by.trim() === "") throw new RangeError("by: is blank");
  const published = await inTransaction(async (tx): Promise<Published> => {
    await tx.execute(sql`select pg_advisory_xact_lock(${publishingLock})`);
    const [draft] = await tx.select().from(policyDrafts).where(eq(policyDrafts.draftId, draftId)).for("update");
    if (draft === undefined) return { kind: "no such draft" };
    if (draft.revision !== revision) return { kind: "changed since", by: draft.savedBy };
    const placed = await placeDraft(tx, draft.document);
    if (placed.kind === "problems") return placed;
    const { policy, place } = placed;
    if (place.kind === "overlaps") return place;
    if (place.kind === "closes") {
      await tx
        .update(policies)
        .set({ closedOn: place.on })
        .where(and(eq(policies.key, policy.key), eq(policies.version, place.version)));
    }
    await store(tx, policy, by);
    await tx.delete(policyDrafts).where(eq(policyDrafts.draftId, draftId));
    await markAllUnits(tx);
    return { kind: "published", key: policy.key, version: policy.version };
  });
  if (published.kind === "published") await settleUnclaimed();
  return published;
}

export interface Retiring {
  readonly key: string;
  readonly version: number;
  readonly by: string;
  readonly reason: string;
}

/**
 * From now on the version decides nothing; claims that it decided keep it. The version that it had closed runs on, up to
 * the next one that stands. False where no such version stands.
 */
export async function retirePolicy({ key, version, by, reason }: Retiring): Promise<boolean> {
  if (by.trim() === "") throw new RangeError("by: is blank");
  if (reason.trim() === "") throw new RangeError("reason: is blank");
  const isRetired = await inTransaction(async (tx) => {
    await tx.execute(sql`select pg_advisory_xact_lock(${publishingLock})`);
    const retired = await tx
      .update(policies)
      .set({ retiredAt: sql`now()`, retiredBy: by, retiredReason: reason })
      .where(and(eq(policies.key, key), eq(policies.version, version), isNull(policies.retiredAt)))
      .returning({ effectiveFrom: policies.effectiveFrom });
    const [gone] = retired;
    if (gone === undefined) return false;
    await tx.execute(sql`
      update policies p set closed_on = (
        select min(n.effective_from) - 1 from policies n
        where n.key = p.key and n.retired_at is null and n.effective_from > p.effective_from)
      where p.key = ${key} and p.retired_at is null and p.closed_on = ${gone.effectiveFrom}::date - 1`);
    await markAllUnits(tx);
    return true;
  });
  if (isRetired) await settleUnclaimed();
  return isRetired;
}

async function store(tx: Transaction, policy: Policy, by: string): Promise<void> {
  const document = JSON.stringify(policy);
  await tx.insert(policies).values({
    key: policy.key,
    makerId: await makerOf(tx, policy.maker),
    name: policy.name,
    version: policy.version,
    effectiveFrom: policy.effectiveFrom,
    effectiveTo: policy.effectiveTo ?? null,
    document: policy,
    documentSha256: createHash("sha256").update(document).digest("hex"),
    sourceDocument: policy.sourceDocument,
    approvedBy: policy.approvedBy,
    publishedAt: sql`now()`,
    publishedBy: by,
  });
}

async function makerOf(tx: Transaction, maker: string | undefined): Promise<number | null> {
  if (maker === undefined) return null;
  const [row] = await tx.rows<{ makerId: number }>(sql`
    insert into makers (name, normalised) values (${maker}, ${normalised(maker)})
    on conflict (normalised) do update set name = makers.name returning maker_id as "makerId"`);
  if (row === undefined) throw new Error("The maker was stored without a number.");
  return row.makerId;
}
