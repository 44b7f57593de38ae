import { eq } from "drizzle-orm";
import { placeVersion, type VersionPlace } from "@/lib/coverage/place-version";
import type { Policy } from "@/lib/domain/policy";
import { type PolicyProblem, parsePolicy } from "@/lib/intake/parse-policy";
import type { Reader } from "../database-types";
import { policies } from "../schema/coverage";
import { closedPolicy } from "./policies";

export type PlacedDraft =
  | { readonly kind: "placed"; readonly policy: Policy; readonly place: VersionPlace }
  | { readonly kind: "problems"; readonly problems: readonly PolicyProblem[] };

/** The draft as the next version of its policy, among the versions that stand. */
export async function placeDraft(db: Reader, document: unknown): Promise<PlacedDraft> {
  const loose = document as { readonly key?: unknown }; // an object by save-policy-draft.ts
  const key = typeof loose.key === "string" ? loose.key : "";
  const versions = await db.select().from(policies).where(eq(policies.key, key));
  const version = 1 + Math.max(0, ...versions.map((row) => row.version));
  const parsed = parsePolicy({ ...loose, version });
  if (!parsed.ok) return { kind: "problems", problems: parsed.problems };
  const standing = versions.filter((row) => row.retiredAt === null).map(closedPolicy);
  const { policy } = parsed;
  const place = placeVersion(
    { effectiveFrom: policy.effectiveFrom, effectiveTo: policy.effectiveTo },
    standing.map((other) => ({
      version: other.version,
      effectiveFrom: other.effectiveFrom,
      effectiveTo: other.effectiveTo,
    })),
  );
  return { kind: "placed", policy, place };
}
