import type { CellMark, SourceItem } from "@/lib/intake/tables/source-row";
import { columnName } from "../staging/named-cells";
import type { HeldSource } from "./held-sources";

/** What to write in a column: in these rows, or in all that have the same problem with the same value. */
export type HeldChange = {
  /** As the problem names it: a column of the file, or one of ours that the file does not have. */
  readonly column: string;
  readonly value: string;
} & (
  | { readonly rows: readonly number[] }
  | { readonly alike: { readonly column: string; readonly value: string; readonly problem: string } }
);

/** The held rows that the changes touch, with all their corrections; every held row where there are no changes. */
export function correctedSources(held: readonly HeldSource[], changes: readonly HeldChange[]): readonly HeldSource[] {
  if (changes.length === 0) return held;
  return held.flatMap((source) => {
    const own = changes.filter((change) => touches(change, source));
    if (own.length === 0) return [];
    const written = Object.fromEntries(own.map(({ column, value }) => [column, value]));
    return [{ ...source, corrections: { ...source.corrections, ...written } }];
  });
}

function touches(change: HeldChange, { row, problems }: HeldSource): boolean {
  if ("rows" in change) return change.rows.includes(row);
  const { column, value, problem } = change.alike;
  return problems.some((each) => each.column === column && each.value === value && each.problem === problem);
}

/** The corrected rows as a reader would give them; a corrected cell is the text that was written. */
export async function* asItems(mended: readonly HeldSource[], header: readonly string[]): AsyncGenerator<SourceItem> {
  const names = header.map((_, place) => columnName(header, place));
  for (const { row, cells, source, corrections } of mended) {
    const given = source === null || "" in cells ? names.map((name) => cells[name] ?? "") : source.cells;
    const places = Math.max(given.length, names.length);
    const texts = Array.from({ length: places }, (_, place) => corrections[names[place] ?? ""] ?? given[place] ?? "");
    yield { kind: "row", row, cells: texts, marks: marksOf(source?.marks ?? [], names, corrections) };
  }
}

function marksOf(
  marks: readonly (readonly [place: number, mark: CellMark])[],
  names: readonly string[],
  corrections: Readonly<Record<string, string>>,
): ReadonlyMap<number, CellMark> {
  return new Map(marks.filter(([place]) => !Object.hasOwn(corrections, names[place] ?? "")));
}
