import { capitalised } from "@/lib/format/capitalised";
import { type FileKind, fileKindNames, isTableKind } from "@/lib/intake/file-kinds";
import type { TargetColumn } from "@/lib/intake/matching/matching";

/** A column of ours in words: "Completed on"; of a part line in a file of jobs, "Part line: unit cost". */
export function fieldName(target: TargetColumn): string {
  const [prefix = "", column] = target.split(".");
  if (column === undefined) return capitalised(inWords(prefix));
  return `${isKind(prefix) ? fileKindNames[prefix].replace(/s$/, "") : capitalised(prefix)}: ${inWords(column)}`;
}

/** A key of the catalogue in words: "drain pump". */
export function inWords(key: string): string {
  return key.replaceAll("_", " ");
}

function isKind(word: string): word is FileKind {
  return isTableKind(word as FileKind); // asked of a word that may be none
}
