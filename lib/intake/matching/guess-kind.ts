import { fileKindNames, neededColumns, type TableKind, tableKinds } from "../file-kinds";
import { recogniseKind } from "../read-header";
import { headerSimilarity } from "./header-similarity";
import { targetFields } from "./target-fields";

/** What the rows of the file are, by its header; `stated` where somebody said so. */
export function guessKind(
  header: readonly string[],
  stated: TableKind | undefined,
): { readonly value: TableKind; readonly reason: string } {
  if (stated !== undefined) return { value: stated, reason: "As stated." };
  const own = recogniseKind(header.map((name) => name.trim()));
  const known =
    own === undefined ? [] : header.filter((name) => targetFields(own).some(({ target }) => target === name.trim()));
  if (own !== undefined && known.length === header.length)
    return { value: own, reason: `All columns are those of ${fileKindNames[own].toLowerCase()}.` };
  const scored = tableKinds.map((kind) => ({ kind, ...scoreOf(kind, header) }));
  const best = scored.reduce((one, other) => (other.score > one.score ? other : one));
  return {
    value: best.kind,
    reason: `${best.named} of ${header.length} columns have names that suit ${fileKindNames[best.kind].toLowerCase()}.`,
  };
}

function scoreOf(kind: TableKind, header: readonly string[]): { readonly score: number; readonly named: number } {
  const needed = new Set(neededColumns(kind));
  const fields = targetFields(kind);
  const met = new Map<string, number>();
  for (const name of header) {
    let best = { target: "", similarity: 0 };
    for (const field of fields) {
      const similarity = headerSimilarity(name, field);
      if (similarity > best.similarity) best = { target: field.target, similarity };
    }
    if (best.similarity >= 0.6) met.set(best.target, Math.max(best.similarity, met.get(best.target) ?? 0));
  }
  const lacking = [...needed].filter((column) => !met.has(column)).length;
  const sum = [...met.values()].reduce((total, similarity) => total + similarity, 0);
  return { score: sum - 0.8 * lacking + (kind === "jobs" ? 0.3 : 0), named: met.size };
}
