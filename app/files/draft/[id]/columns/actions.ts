"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { mayDo } from "@/app/_people/may-do";
import type { FieldProblem } from "@/app/_ui/error-summary";
import { keepNotes, openDraft } from "../../../_draft/open-draft";
import { addressOf } from "../../../_draft/where-it-stands";
import { beginTask } from "../../../_work/begin-task";
import { readColumnsForm } from "./read-columns-form";

const columnsForm = z.object({ draft: z.uuid() });

export interface ColumnsState {
  readonly problems: readonly FieldProblem[];
}

/** Keeps the matching and checks the rows by it. What then turns out to be open is asked on the same page. */
export async function keepColumns(_previous: ColumnsState, form: FormData): Promise<ColumnsState> {
  await mayDo("files.load");
  const { draft: draftId } = columnsForm.parse({ draft: form.get("draft") });
  const draft = await openDraft(draftId);
  if (draft?.matching === undefined) redirect(addressOf(draftId));
  const read = readColumnsForm(form, draft.matching);
  if (!read.ok) return { problems: read.problems };
  await keepNotes(draftId, { checked: undefined, broken: undefined }, { step: "match", matching: read.matching });
  beginTask(draftId, "check");
  redirect(addressOf(draftId));
}
