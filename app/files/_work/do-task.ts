import { type OpenDraft, openDraft } from "../_draft/open-draft";
import { addRows } from "./add-rows";
import { checkRows } from "./check-rows";
import { lookAtFile } from "./look-at-file";
import type { FileTask, WorkProgress } from "./work-state";

/** How work reports and how it is stopped. */
export interface WorkLine {
  readonly onProgress: (progress: WorkProgress) => void;
  readonly signal: AbortSignal;
}

/** Does one task on a draft and keeps in the draft what came of it. @returns false where there is no such draft */
export async function doTask(draftId: string, task: FileTask, line: WorkLine): Promise<boolean> {
  const draft = await openDraft(draftId);
  if (draft === undefined) return false;
  await tasks[task](draft, line);
  return !line.signal.aborted;
}

const tasks: Readonly<Record<FileTask, (draft: OpenDraft, line: WorkLine) => Promise<void>>> = {
  look: lookAtFile,
  check: checkRows,
  add: addRows,
};
