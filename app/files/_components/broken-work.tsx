import { Notice } from "@/app/_ui/notice";
import type { DraftNotes } from "../_draft/draft-notes";
import type { FileTask } from "../_work/work-state";

const titles: Readonly<Record<FileTask, string>> = {
  look: "Looking at the file was broken off",
  check: "Checking the rows was broken off",
  add: "Adding was broken off",
};

/** Says why the last work on a draft did not come to its end. */
export function BrokenWork({ broken }: { readonly broken: DraftNotes["broken"] }) {
  if (broken === undefined) return null;
  return (
    <Notice status="watch" title={titles[broken.task]}>
      <p>{broken.sentence}</p>
    </Notice>
  );
}
