import { keepNotes } from "../_draft/open-draft";
import { startWork, type WorkEnd } from "./file-work";
import type { FileTask } from "./work-state";

/** Starts a task on a draft; where it does not come to its end, the draft says why. @returns false where another task is in hand */
export function beginTask(draftId: string, task: FileTask): boolean {
  return startWork(draftId, task, async (end) => {
    if (end !== "done") await keepNotes(draftId, { broken: { task, sentence: sentences[end](task) } });
  });
}

const nothing = (task: FileTask) => (task === "add" ? " Nothing was added." : "");

const sentences: Readonly<Record<Exclude<WorkEnd, "done">, (task: FileTask) => string>> = {
  stopped: (task) => `You stopped it.${nothing(task)}`,
  "out of memory": (task) =>
    `It took more memory than one file may take.${nothing(task)} Split the file, or save it as CSV.`,
  "out of time": (task) => `It took longer than two hours.${nothing(task)} Split the file.`,
  failed: (task) => `It ended with an error, which stands in the log of the site.${nothing(task)} Try again.`,
};
