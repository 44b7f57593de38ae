import { readOnly } from "@/db/client";
import { loadJobRecord } from "@/db/queries/job-record";
import { saveClaim } from "@/db/writes/claims/save-claim";
import { type Day, toPlainDate } from "@/lib/calendar/day";
import { judgeJob } from "./judge-job";

export interface DraftAsked {
  readonly jobNumber: string;
  readonly policy: { readonly id: number } | { readonly key: string };
  readonly by: string;
  readonly today: Day;
  /** Instant, ISO text; now where absent. */
  readonly at?: string;
}

export type KeptDraft =
  | { readonly kind: "kept"; readonly claimNumber: string }
  | { readonly kind: "not kept"; readonly problems: readonly string[] };

/** Keeps the claim of one job under one policy as a draft; judged anew here, never taken from a form. */
export async function keepDraft({ jobNumber, policy, by, today, at }: DraftAsked): Promise<KeptDraft> {
  const judged = await readOnly(async (db) => {
    const stored = await loadJobRecord(db, jobNumber);
    return stored && judgeJob(db, stored, today);
  });
  const chosen = judged?.claims.find(({ policyId, given }) =>
    "id" in policy ? policyId === policy.id : given.policy.key === policy.key,
  );
  if (judged === undefined || chosen === undefined)
    return { kind: "not kept", problems: ["This job or policy is no longer on file. Open the job again."] };
  if (chosen.assembly.kind === "blocked")
    return { kind: "not kept", problems: chosen.assembly.reasons.map(({ sentence }) => sentence) };
  const { stored, decision, evidence } = judged;
  const claimNumber = await saveClaim({
    unitId: stored.unitId,
    jobId: stored.jobId,
    policyId: chosen.policyId,
    claim: chosen.assembly.claim,
    decision,
    evidence,
    by,
    builtAt: at ?? new Date().toISOString(),
    year: toPlainDate(today).year,
  });
  return { kind: "kept", claimNumber };
}
