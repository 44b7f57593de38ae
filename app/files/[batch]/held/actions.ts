"use server";
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { mayDo } from "@/app/_people/may-do";
import { leaveOutRows, putBackRows } from "@/db/writes/leave-out-rows";
import { mendHeldRows } from "@/db/writes/mend-held-rows";
import { type MendState, mendStateOf } from "./mend-state";
import { readMendForm } from "./read-mend-form";

/** What would become of the corrected rows; and, where that was seen, takes them in as a load that follows the first. */
export async function mend(_previous: MendState, form: FormData): Promise<MendState> {
  await mayDo("files.load");
  const read = readMendForm(form);
  if (read === undefined) return { kind: "refused", sentence: "The form did not arrive whole. Load this page again." };
  const { batch, changes, mode } = read;
  if (changes.length === 0)
    return { kind: "refused", sentence: "Nothing was changed. Write what the cell should say." };
  const result = await mendHeldRows({ batchId: batch, changes, mode, problemLimit: 20 });
  if (result.kind === "added" || result.kind === "loaded before") {
    revalidatePath(`/files/${batch}`);
    redirect(`/files/${batch}/held`);
  }
  return mendStateOf(result);
}

const rowsForm = z.object({
  batch: z.coerce.number().int().positive(),
  rows: z
    .string()
    .regex(/^\d+(,\d+)*$/)
    .transform((text) => text.split(",").map(Number)),
});
const leaveForm = rowsForm.extend({
  reason: z.string().trim().min(1).max(500),
});

/** A person says that rows are not to come in, and why. */
export async function leaveOut(form: FormData): Promise<void> {
  await mayDo("files.load");
  const { batch, rows, reason } = leaveForm.parse(Object.fromEntries(form));
  await leaveOutRows({ batchId: batch, rows, reason });
  revalidatePath(`/files/${batch}`);
  redirect(`/files/${batch}/held`);
}

/** Rows that a person left out wait again. */
export async function putBack(form: FormData): Promise<void> {
  await mayDo("files.load");
  const { batch, rows } = rowsForm.parse(Object.fromEntries(form));
  await putBackRows({ batchId: batch, rows });
  revalidatePath(`/files/${batch}`);
  redirect(`/files/${batch}/held`);
}
