"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { mayDo } from "@/app/_people/may-do";
import { correctionsWith } from "../../../_draft/corrections";
import { dropDraft, keepNotes, openDraft } from "../../../_draft/open-draft";
import { addressOf } from "../../../_draft/where-it-stands";
import { beginTask } from "../../../_work/begin-task";
import { dropUpload } from "../../../uploads";

const draftForm = z.object({ draft: z.uuid() });

export async function checkAgain(form: FormData): Promise<void> {
  await mayDo("files.load");
  const { draft } = draftForm.parse(Object.fromEntries(form));
  await keepNotes(draft, { checked: undefined, unreadable: undefined, broken: undefined });
  beginTask(draft, "check");
  redirect(addressOf(draft));
}

/** Adds the good rows in a process of its own; what they are is checked anew there. */
export async function addRows(form: FormData): Promise<void> {
  await mayDo("files.load");
  const { draft } = draftForm.parse(Object.fromEntries(form));
  await keepNotes(draft, { broken: undefined });
  beginTask(draft, "add");
  redirect(addressOf(draft));
}

/** Puts away a copy of a file that is in already. */
export async function leaveIt(form: FormData): Promise<void> {
  await mayDo("files.load");
  const { draft } = draftForm.parse(Object.fromEntries(form));
  await dropDraft(draft);
  await dropUpload(draft);
  redirect("/files");
}

const correctionForm = draftForm.extend({
  /** Header of the file's column. */
  column: z.string().min(1).max(20_000),
  text: z.string().max(20_000),
  rows: z
    .string()
    .regex(/^\d+(,\d+)*$/)
    .transform((text) => text.split(",").map(Number)),
});

/** Keeps a correction of one cell, or of all cells of the column that hold the same, and checks the rows with it. */
export async function correctCells(form: FormData): Promise<void> {
  await mayDo("files.load");
  const { draft: draftId, ...correction } = correctionForm.parse(Object.fromEntries(form));
  const draft = await openDraft(draftId);
  if (draft === undefined) redirect(addressOf(draftId));
  await keepNotes(draftId, {
    corrections: correctionsWith(draft.notes.corrections ?? [], correction),
    checked: undefined,
  });
  beginTask(draftId, "check");
  redirect(addressOf(draftId));
}
