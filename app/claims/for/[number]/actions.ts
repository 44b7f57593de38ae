"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { judgeJob } from "@/app/_claims/judge-job";
import { todayIn } from "@/app/_clock/today";
import { readOnly } from "@/db/client";
import { loadJobRecord } from "@/db/queries/job-record";
import { loadShop } from "@/db/queries/shop";
import { saveClaim } from "@/db/writes/claims/save-claim";
import { toPlainDate } from "@/lib/calendar/day";

const claimForm = z.object({ job: z.string().min(1).max(200), policy: z.coerce.number().int().positive() });

export interface KeepState {
  readonly problems: readonly string[];
}

/** Keeps the claim of one job under one policy as a draft; judged anew here, never taken from the form. */
export async function keepClaim(_previous: KeepState, form: FormData): Promise<KeepState> {
  const read = claimForm.safeParse(Object.fromEntries(form));
  if (!read.success) return { problems: ["The form did not arrive whole. Open the job again and start from there."] };
  const today = await readOnly(async (db) => todayIn((await loadShop(db)).timeZone));
  const judged = await readOnly(async (db) => {
    const stored = await loadJobRecord(db, read.data.job);
    return stored && judgeJob(db, stored, today);
  });
  const chosen = judged?.claims.find((claim) => claim.policyId === read.data.policy);
  if (judged === undefined || chosen === undefined)
    return { problems: ["This job or policy is no longer on file. Open the job again."] };
  if (chosen.assembly.kind === "blocked") return { problems: chosen.assembly.reasons.map((reason) => reason.sentence) };
  const { stored, decision, evidence } = judged;
  const number = await saveClaim({
    unitId: stored.unitId,
    jobId: stored.jobId,
    policyId: chosen.policyId,
    claim: chosen.assembly.claim,
    decision,
    evidence,
    by: "the shop",
    builtAt: new Date().toISOString(),
    year: toPlainDate(today).year,
  });
  redirect(`/claims/${encodeURIComponent(number)}`);
}
