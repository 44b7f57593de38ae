import { redirect } from "next/navigation";
import { workOn } from "../_work/file-work";
import { type OpenDraft, openDraft } from "./open-draft";
import { addressOf } from "./where-it-stands";

/** The draft of a step's page; undefined where it is gone. While something is being done with it, its progress is shown instead. */
export async function enterStep(draftId: string): Promise<OpenDraft | undefined> {
  if (workOn(draftId) !== undefined) redirect(addressOf(draftId));
  const draft = await openDraft(draftId);
  if (draft?.notes.added !== undefined) redirect(`/files/${draft.notes.added}`);
  return draft;
}
