"use server";
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { todayIn } from "@/app/_clock/today";
import { mayDo } from "@/app/_people/may-do";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import { type FailedPart, putBackOnShelf, recordPartFate } from "@/db/writes/claims/record-part-fate";
import { readDay } from "@/lib/calendar/day";
import { partFateKeys } from "@/lib/claims/recovery/part-fate";
import type { ManyRow, ManyState } from "../many-actions";

const most = 200;
const chosenPart = /^(.{1,200}) (\d{1,4})$/;

const given = z.object({
  fate: z.enum(["on shelf", ...partFateKeys]),
  on: z.string(),
  tag: z.string().trim().max(200),
  by: z.string().trim().max(200),
  reason: z.string().trim().max(1000),
});

/** Enters for each chosen part where it went, or that it is on the shelf after all; one that is refused keeps no other. */
export async function recordFates(_previous: ManyState, form: FormData): Promise<ManyState> {
  const person = await mayDo("claims.act");
  form.set("by", person.name);
  const parts = partsOf(form);
  const read = given.safeParse(Object.fromEntries(form));
  const on = read.success ? readDay(read.data.on) : undefined;
  if (typeof parts === "string") return none(parts);
  if (!read.success) return none("The form did not arrive whole. Open the page again and start from there.");
  if (on === undefined) return none(`“${read.data.on.slice(0, 40)}” is not a day; write it as 2026-03-31.`);
  const { fate, tag, by, reason } = read.data;
  const today = await readOnly(async (db) => todayIn((await loadShop(db)).timeZone));
  const at = new Date().toISOString();
  const done: ManyRow[] = [];
  const failed: ManyRow[] = [];
  for (const part of parts) {
    const result =
      fate === "on shelf"
        ? await putBackOnShelf(part, { by, reason, on, at })
        : await recordPartFate(part, { entry: { fate, on, tag, by, reason }, today, at });
    const row = {
      row: `${part.claimNumber}, line ${part.line}`,
      href: `/claims/${encodeURIComponent(part.claimNumber)}`,
    };
    if (result.kind === "refused") failed.push({ ...row, sentence: result.sentence });
    else done.push({ ...row, sentence: result.kind === "recorded" ? "entered" : "stood there already" });
  }
  revalidatePath("/claims/failed-parts");
  return { done, failed };
}

function partsOf(form: FormData): readonly FailedPart[] | string {
  const chosen = [...new Set(form.getAll("chosen").map(String))];
  if (chosen.length === 0) return "Nothing is chosen. Tick the parts first.";
  if (chosen.length > most) return `${chosen.length} parts are chosen; ${most} go at once.`;
  return chosen.flatMap((value) => {
    const [, claimNumber, line] = chosenPart.exec(value) ?? [];
    return claimNumber === undefined || line === undefined ? [] : [{ claimNumber, line: Number(line) }];
  });
}

function none(problem: string): ManyState {
  return { problem, done: [], failed: [] };
}
