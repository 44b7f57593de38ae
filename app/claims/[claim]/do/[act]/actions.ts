"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { actSlugKeys, actTitles } from "@/app/_claims/act-forms";
import { contentMaker } from "@/app/_claims/make-content";
import { todayIn } from "@/app/_clock/today";
import { mayDo } from "@/app/_people/may-do";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import { type ActRequest, type ActResult, actOnClaim } from "@/db/writes/claims/act-on-claim";
import { type NotSent, sendClaim } from "@/db/writes/claims/send-claim";
import type { ActState } from "./act-state";
import { type ReadAct, readActForm } from "./read-act-form";

const envelope = z.object({
  claim: z.string().min(1).max(200),
  act: z.enum(actSlugKeys as [(typeof actSlugKeys)[number], ...(typeof actSlugKeys)[number][]]), // never empty
  version: z.coerce.number().int().positive(),
  key: z.uuid(),
  note: z.string().trim().max(4_000).default(""),
});

/** Records one act on one claim, whatever the form said it looked like: everything is judged anew. */
export async function recordAct(_previous: ActState, form: FormData): Promise<ActState> {
  const person = await mayDo("claims.act");
  const asked = envelope.safeParse(Object.fromEntries(form));
  if (!asked.success) return problem("The form did not arrive whole. Open the claim again and start from there.");
  const { claim, act: slug, version, key, note } = asked.data;
  const today = await readOnly(async (db) => todayIn((await loadShop(db)).timeZone));
  const read = readActForm(slug, form, today);
  if (!read.ok) return { problems: read.problems };
  const request: ActRequest = {
    claimNumber: claim,
    seenVersion: version,
    key,
    by: person.name,
    note,
    at: new Date().toISOString(),
  };
  const result = await record(request, read, today);
  if (result.kind === "recorded") redirect(`/claims/${encodeURIComponent(claim)}?done=${slug}`);
  return told(result, actTitles[slug]);
}

function record(request: ActRequest, read: Extract<ReadAct, { ok: true }>, today: ReturnType<typeof todayIn>) {
  if (read.what === "other") return actOnClaim(request, read.act);
  const { sentOn, reasons } = read.sending;
  return sendClaim({ ...request, ...read.sending }, contentMaker({ today, sentOn, reasons }));
}

function told(result: Exclude<ActResult, { kind: "recorded" }> | NotSent, title: string): ActState {
  switch (result.kind) {
    case "not sent":
      return {
        problems: result.problems.map(({ check, sentence }) => ({
          text: sentence,
          ...(check === undefined ? {} : { field: `reason-${check}` }),
        })),
      };
    case "refused":
      return problem(result.sentence);
    case "stale":
      return { problems: [], stale: result };
    case "no such claim":
      return problem("This claim is no longer on file.");
    case "running":
      return problem("The same form is being recorded right now. Look at the claim in a moment.");
    case "key used":
      return problem(`“${title}” was already recorded from this form with other values. Look at the claim first.`);
  }
}

function problem(text: string): ActState {
  return { problems: [{ text }] };
}
