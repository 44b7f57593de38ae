"use server";
import { join } from "node:path";
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { mayDo } from "@/app/_people/may-do";
import { eraseCustomer } from "@/db/erasure/erase-customer";
import { erasureListFile, keepErasureList } from "@/db/erasure/erasure-list";
import { retentionRules } from "@/db/retention/retention-rules";
import { previewRetention, setRetention } from "@/db/retention/run-retention";
import { linesOf } from "@/lib/people/erasure-words";
import type { ErasureState, TimesState } from "./keeping-state";

const erasureForm = z.object({
  words: z.string().max(4000),
  jobs: z.string().max(20_000),
  reason: z.string().trim().max(1000),
  step: z.enum(["try", "erase"]),
  sure: z.string().optional(),
});

/** A trial first; for good only once the box is ticked that says that it cannot be undone. */
export async function forgetCustomer(_previous: ErasureState, form: FormData): Promise<ErasureState> {
  const person = await mayDo("customers.erase");
  const read = erasureForm.safeParse(Object.fromEntries(form));
  if (!read.success) return { problems: [{ text: "The form did not arrive whole. Load this page again." }], texts: {} };
  const { words, jobs, reason, step, sure } = read.data;
  const texts = { words, jobs, reason };
  if (reason === "")
    return { problems: [{ field: "reason", text: "Say why, without the customer's name: it stays." }], texts };
  const dry = step === "try";
  if (!dry && sure !== "yes")
    return { problems: [{ text: "Tick the box first: what is erased cannot be brought back." }], texts };
  const asked = { words: linesOf(words), jobNumbers: linesOf(jobs), by: person.name, reason, at: new Date() };
  try {
    const erased = await eraseCustomer(asked, { dry });
    if (dry) return { problems: [], texts, tried: erased };
    await keepErasureList(join(".data", erasureListFile));
    revalidatePath("/shop/keeping");
    return { problems: [], texts: {}, done: erased };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const field = error.message.startsWith("jobNumbers") ? "jobs" : "words";
    return { problems: [{ field, text: error.message.replace(/^\w+: /, "") }], texts };
  }
}

const timesForm = z.object({
  step: z.enum(["try", "set"]),
  kind: z.enum(retentionRules.map(({ kind }) => kind) as [string, ...string[]]), // there are some
  days: z.string().trim().max(10),
});

/** How long a kind of thing is kept, or what is over its time now. */
export async function changeTimes(_previous: TimesState, form: FormData): Promise<TimesState> {
  const person = await mayDo("customers.erase");
  const read = timesForm.safeParse(Object.fromEntries(form));
  if (!read.success) return { problems: [{ text: "The form did not arrive whole. Load this page again." }] };
  const { step, kind, days } = read.data;
  if (step === "try") return { problems: [], due: await previewRetention(new Date()) };
  const asked = days === "" ? null : Number(days);
  if (asked !== null && !(Number.isInteger(asked) && asked >= 1 && asked <= 36_500))
    return { problems: [{ field: "days", text: "Write whole days from 1 to 36500, or nothing to keep it for good." }] };
  await setRetention(kind, asked, { by: person.name, now: new Date() });
  revalidatePath("/shop/keeping");
  return { problems: [], said: asked === null ? "It is kept for good." : "The new time holds from tonight." };
}
