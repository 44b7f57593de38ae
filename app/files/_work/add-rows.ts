import { rememberMatching } from "@/db/writes/remember-matching";
import { keepNotes, type OpenDraft } from "../_draft/open-draft";
import { dropUpload } from "../uploads";
import { loadDraft } from "./check-rows";
import type { WorkLine } from "./do-task";

/** Adds the good rows as one load and keeps the others with it. Everything is checked anew, since the data may have changed meanwhile. */
export async function addRows(draft: OpenDraft, line: WorkLine): Promise<void> {
  const { draftId } = draft;
  const result = await loadDraft(draft, "add and set aside", line);
  if (result.kind === "added" || result.kind === "loaded before") {
    if (result.kind === "added" && !draft.notes.ours && draft.form !== undefined && draft.matching !== undefined)
      await rememberMatching({ form: draft.form, matching: draft.matching });
    await keepNotes(draftId, { added: result.batchId, broken: undefined });
    await dropUpload(draftId);
    return;
  }
  const problems = result.kind === "unreadable" ? result.problems : [];
  await keepNotes(draftId, { unreadable: problems, checked: undefined });
}
