"use server";
import { createHash } from "node:crypto";
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { keepDraft } from "@/app/_claims/keep-draft";
import { contentMaker } from "@/app/_claims/make-content";
import { todayIn } from "@/app/_clock/today";
import { mayDo } from "@/app/_people/may-do";
import { readOnly } from "@/db/client";
import { loadClaimLife } from "@/db/queries/claim-life";
import { findClaim } from "@/db/queries/claim-list";
import { loadShop } from "@/db/queries/shop";
import { sendClaim } from "@/db/writes/claims/send-claim";
import { type Day, readDay } from "@/lib/calendar/day";
import { sendingWayKeys } from "@/lib/claims/life/sending-way";

export interface ManyRow {
  readonly row: string;
  readonly href: string;
  readonly sentence: string;
}

export interface ManyState {
  /** Of the form as a whole. */
  readonly problem?: string;
  readonly done: readonly ManyRow[];
  readonly failed: readonly ManyRow[];
}

const most = 200;

/** A draft for each chosen job; one that can't be claimed doesn't keep the others. */
export async function makeDrafts(_previous: ManyState, form: FormData): Promise<ManyState> {
  const person = await mayDo("claims.act");
  const chosen = chosenOf(form);
  if (typeof chosen === "string") return { problem: chosen, done: [], failed: [] };
  const today = await readOnly(async (db) => todayIn((await loadShop(db)).timeZone));
  const done: ManyRow[] = [];
  const failed: ManyRow[] = [];
  for (const value of chosen) {
    const cut = value.lastIndexOf(" ");
    const [job, policy] = [value.slice(0, cut), value.slice(cut + 1)];
    const kept = await keepDraft({ jobNumber: job, policy: { key: policy }, by: person.name, today });
    const href = `/claims/for/${encodeURIComponent(job)}`;
    if (kept.kind === "kept")
      done.push({
        row: job,
        href: `/claims/${encodeURIComponent(kept.claimNumber)}`,
        sentence: `draft ${kept.claimNumber}`,
      });
    else failed.push({ row: job, href, sentence: kept.problems.join(" ") });
  }
  revalidatePath("/claims");
  return { done, failed };
}

const sending = z.object({ on: z.string(), way: z.enum(sendingWayKeys as ["portal"]), key: z.uuid() }); // never empty

/** Each chosen draft is judged and sent by itself; one whose checks fail stays a draft and says why. */
export async function markSent(_previous: ManyState, form: FormData): Promise<ManyState> {
  const person = await mayDo("claims.act");
  const chosen = chosenOf(form);
  if (typeof chosen === "string") return { problem: chosen, done: [], failed: [] };
  const read = sending.safeParse(Object.fromEntries(form));
  const sentOn = read.success ? readDay(read.data.on) : undefined;
  if (!read.success || sentOn === undefined)
    return { problem: "Enter the day of sending, and how they were sent.", done: [], failed: [] };
  const today = await readOnly(async (db) => todayIn((await loadShop(db)).timeZone));
  const done: ManyRow[] = [];
  const failed: ManyRow[] = [];
  for (const claimNumber of chosen) {
    const href = `/claims/${encodeURIComponent(claimNumber)}`;
    const sentence = await sendOne({
      claimNumber,
      sentOn,
      way: read.data.way,
      key: read.data.key,
      by: person.name,
      today,
    });
    if (sentence === undefined) done.push({ row: claimNumber, href, sentence: "sent" });
    else failed.push({ row: claimNumber, href: `${href}/do/sent`, sentence });
  }
  revalidatePath("/claims");
  return { done, failed };
}

interface One {
  readonly claimNumber: string;
  readonly sentOn: Day;
  readonly way: (typeof sendingWayKeys)[number];
  readonly key: string;
  readonly by: string;
  readonly today: Day;
}

/** @returns why it was not sent */
async function sendOne({ claimNumber, sentOn, way, key, by, today }: One): Promise<string | undefined> {
  const seen = await readOnly(async (db) => {
    const row = await findClaim(db, claimNumber);
    return row && { state: row.state, version: (await loadClaimLife(db, claimNumber))?.version ?? 0 };
  });
  if (seen === undefined) return "This claim is no longer on file.";
  if (seen.state !== "draft") return `It is ${seen.state} already.`;
  const request = {
    claimNumber,
    seenVersion: seen.version,
    key: createHash("sha256").update(`${key}|${claimNumber}`).digest("hex"),
    by,
    note: "",
    at: new Date().toISOString(),
    sentOn,
    way,
    reference: "",
    reasons: {},
  };
  const result = await sendClaim(request, contentMaker({ today, sentOn, reasons: {} }));
  switch (result.kind) {
    case "recorded":
      return undefined;
    case "not sent":
      return result.problems.map(({ sentence }) => sentence).join(" ");
    case "refused":
      return result.sentence;
    case "stale":
    case "running":
    case "key used":
    case "no such claim":
      return "Somebody is working on it right now. Look at the claim.";
  }
}

function chosenOf(form: FormData): readonly string[] | string {
  const chosen = form.getAll("chosen").flatMap((value) => (typeof value === "string" ? [value.slice(0, 400)] : []));
  if (chosen.length === 0) return "Nothing is chosen. Tick the rows first.";
  if (chosen.length > most) return `${chosen.length} rows are chosen; ${most} go at once.`;
  return [...new Set(chosen)];
}
