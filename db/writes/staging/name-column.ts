import type { StagedKind } from "./staged-kind";

/** The staging column that names a row to people. */
export function nameColumn({ columns, named, target }: StagedKind): string {
  const own = columns.find(({ from, use }) => from === named.column && use !== "value");
  return own?.name ?? target.key[0] ?? "row";
}
