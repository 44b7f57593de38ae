import { and, eq, sql } from "drizzle-orm";
import type { LooseDocument } from "@/lib/intake/policy-form/policy-form";
import { inTransaction } from "../../in-transaction";
import { policies, policyDrafts } from "../../schema/coverage";

export interface DraftSaving {
  readonly draftId: number;
  /** The saving that was on the screen. */
  readonly revision: number;
  readonly document: LooseDocument;
  readonly by: string;
}

export type DraftSaved =
  | { readonly kind: "saved" }
  /** Somebody saved in between: what was sent is kept as another draft. */
  | { readonly kind: "kept apart"; readonly draftId: number }
  | { readonly kind: "no such draft" };

/** A draft that begins as a copy of a version, or with nothing. Undefined where there is no such version. */
export async function beginPolicyDraft(from: number | undefined, by: string): Promise<number | undefined> {
  return await inTransaction(async (tx) => {
    let document: unknown = {};
    if (from !== undefined) {
      const [row] = await tx.select().from(policies).where(eq(policies.policyId, from));
      if (row === undefined) return undefined;
      // Source and approval belong to the version before; the new one needs its own.
      const {
        version: _,
        sourceDocument: __,
        approvedBy: ___,
        approvedOn: ____,
        effectiveTo: _____,
        ...rest
      } = row.document as Record<string, unknown>; // an object: it was parsed before it was stored
      document = rest;
    }
    const [draft] = await tx
      .insert(policyDrafts)
      .values({ basedOn: from ?? null, document, savedAt: sql`now()`, savedBy: by, revision: 1 })
      .returning({ draftId: policyDrafts.draftId });
    return draft?.draftId;
  });
}

export async function savePolicyDraft({ draftId, revision, document, by }: DraftSaving): Promise<DraftSaved> {
  return await inTransaction(async (tx) => {
    const saved = { document, savedAt: sql`now()`, savedBy: by };
    const updated = await tx
      .update(policyDrafts)
      .set({ ...saved, revision: revision + 1 })
      .where(and(eq(policyDrafts.draftId, draftId), eq(policyDrafts.revision, revision)))
      .returning({ draftId: policyDrafts.draftId });
    if (updated.length > 0) return { kind: "saved" };
    const [other] = await tx.select().from(policyDrafts).where(eq(policyDrafts.draftId, draftId));
    if (other === undefined) return { kind: "no such draft" };
    const [apart] = await tx
      .insert(policyDrafts)
      .values({ ...saved, basedOn: other.basedOn, revision: 1 })
      .returning({ draftId: policyDrafts.draftId });
    if (apart === undefined) throw new Error("The draft was stored without a number.");
    return { kind: "kept apart", draftId: apart.draftId };
  });
}

export async function deletePolicyDraft(draftId: number): Promise<void> {
  await inTransaction(async (tx) => {
    await tx.delete(policyDrafts).where(eq(policyDrafts.draftId, draftId));
  });
}
