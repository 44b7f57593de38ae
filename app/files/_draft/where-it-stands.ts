import type { OpenDraft } from "./open-draft";

/** The step at which a draft stands: where *Go on* leads. */
export type Standing = "unreadable" | "look" | "columns" | "rows" | "added";

export function whereItStands({ step, notes }: Pick<OpenDraft, "step" | "notes">): Standing {
  if (notes.added !== undefined) return "added";
  if (notes.unreadable !== undefined) return "unreadable";
  if (notes.ours) return "rows";
  return step === "look" ? "look" : step === "match" ? "columns" : "rows";
}

/** Address of a draft, or of one of its steps. */
export function addressOf(draftId: string, step?: "look" | "columns" | "rows"): string {
  return step === undefined ? `/files/draft/${draftId}` : `/files/draft/${draftId}/${step}`;
}

/** Where to go on with a draft. */
export function onwardFrom({ draftId, step, notes }: Pick<OpenDraft, "draftId" | "step" | "notes">): string {
  const standing = whereItStands({ step, notes });
  if (standing === "added") return `/files/${notes.added}`;
  return addressOf(draftId, standing === "unreadable" ? "look" : standing);
}

export const standingWords: Readonly<Record<Standing, string>> = {
  unreadable: "can’t be read",
  look: "to be looked at",
  columns: "columns to be matched",
  rows: "rows to be checked and added",
  added: "added",
};
