import type { StepKey } from "../_components/steps";
import type { OpenDraft } from "./open-draft";
import { addressOf, whereItStands } from "./where-it-stands";

/** Steps of a draft that can be gone to from where it stands: all before it, and it. */
export function stepHrefs(draft: OpenDraft): Readonly<Partial<Record<StepKey, string>>> {
  const { draftId, notes } = draft;
  const standing = whereItStands(draft);
  const choose = { choose: "/files/new" };
  if (notes.ours || standing === "unreadable")
    return { ...choose, ...(notes.ours && { rows: addressOf(draftId, "rows") }) };
  return {
    ...choose,
    look: addressOf(draftId, "look"),
    ...(standing !== "look" && { columns: addressOf(draftId, "columns") }),
    ...(standing === "rows" && { rows: addressOf(draftId, "rows") }),
  };
}
