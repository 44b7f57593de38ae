"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { keepDraft } from "@/app/_claims/keep-draft";
import { todayIn } from "@/app/_clock/today";
import { mayDo } from "@/app/_people/may-do";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";

const claimForm = z.object({ job: z.string().min(1).max(200), policy: z.coerce.number().int().positive() });

export interface KeepState {
  readonly problems: readonly string[];
}

/** Keeps the claim of one job under one policy as a draft, and opens it. */
export async function keepClaim(_previous: KeepState, form: FormData): Promise<KeepState> {
  const person = await mayDo("claims.act");
  const read = claimForm.safeParse(Object.fromEntries(form));
  if (!read.success) return { problems: ["The form did not arrive whole. Open the job again and start from there."] };
  const { job, policy } = read.data;
  const today = await readOnly(async (db) => todayIn((await loadShop(db)).timeZone));
  const kept = await keepDraft({ jobNumber: job, policy: { id: policy }, by: person.name, today });
  if (kept.kind === "not kept") return { problems: kept.problems };
  redirect(`/claims/${encodeURIComponent(kept.claimNumber)}`);
}
