import { todayIn } from "@/app/_clock/today";
import type { Reader } from "@/db/database-types";
import { type PlacedDraft, placeDraft } from "@/db/queries/place-draft";
import { findPolicyDraft, type PolicyDraft } from "@/db/queries/policy-versions";
import { loadShop } from "@/db/queries/shop";
import { loadPolicyImpact, type PolicyImpact } from "../../../load-policy-impact";

export interface Review {
  readonly draft: PolicyDraft;
  readonly placed: PlacedDraft;
  /** Absent while the draft cannot be published. */
  readonly impact: PolicyImpact | undefined;
}

/** A draft, whether it can be published, and what that would alter. */
export async function loadReview(db: Reader, id: string): Promise<Review | undefined> {
  if (!/^\d{1,9}$/.test(id)) return undefined;
  const draft = await findPolicyDraft(db, Number(id));
  if (draft === undefined) return undefined;
  const placed = await placeDraft(db, draft.document);
  if (placed.kind === "problems" || placed.place.kind === "overlaps") return { draft, placed, impact: undefined };
  const today = todayIn((await loadShop(db)).timeZone);
  const { policy, place } = placed;
  return { draft, placed, impact: await loadPolicyImpact(db, { policy, place, today }) };
}
