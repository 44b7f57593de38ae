import { readOnly } from "../client";
import { fileDrafts } from "../schema/drafts";

/** Of all files on their way in: whatever else lies among the uploads belongs to none. */
export async function openDraftIds(): Promise<readonly string[]> {
  return (await readOnly((db) => db.select({ id: fileDrafts.draftId }).from(fileDrafts))).map(({ id }) => id);
}
