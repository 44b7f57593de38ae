import { type FileKind, isFileKind, isTableKind, type TableKind } from "@/lib/intake/file-kinds";
import type { Matching } from "@/lib/intake/matching/matching";
import type { Translation } from "@/lib/intake/matching/translation";
import type { SourceRow } from "@/lib/intake/tables/source-row";
import { columnName } from "../staging/named-cells";
import type { HeldSource } from "./held-sources";

type OwnCell = readonly [kind: TableKind, column: string, value: string];

/** Corrections of columns that are ours and that the file does not have: written over what the matching makes of the row. */
export function ourColumns(mended: readonly HeldSource[], matching: Matching) {
  const header = matching.columns.map(({ source }) => source);
  const names = new Set(header.map((_, place) => columnName(header, place)));
  const cells = new Map(
    mended.map(({ row, corrections }) => [
      row,
      Object.entries(corrections).flatMap(([name, value]) =>
        names.has(name) ? [] : [ownCell(matching.kind, name, value)],
      ),
    ]),
  );
  return {
    presentOf: (kind: FileKind): ReadonlySet<string> =>
      new Set([...cells.values()].flat().flatMap(([of, column]) => (of === kind ? [column] : []))),
    over:
      (translate: (row: SourceRow) => Translation) =>
      (row: SourceRow): Translation => {
        const translation = translate(row);
        return translation.kind === "rows" ? written(translation, cells.get(row.row) ?? []) : translation;
      },
  };
}

function ownCell(main: TableKind, name: string, value: string): OwnCell {
  const [kind = "", column] = name.split(".");
  if (column === undefined) return [main, name, value];
  if (isFileKind(kind) && isTableKind(kind)) return [kind, column, value];
  throw new RangeError(`changes: ${name} is no column of the file and none of ours`);
}

function written(translation: Translation & { kind: "rows" }, cells: readonly OwnCell[]): Translation {
  const rows = translation.rows.map(({ kind, cells: own }) => ({
    kind,
    cells: {
      ...own,
      ...Object.fromEntries(cells.flatMap(([of, column, value]) => (of === kind ? [[column, value]] : []))),
    },
  }));
  return { ...translation, rows };
}
