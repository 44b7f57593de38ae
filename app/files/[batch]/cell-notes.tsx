import { type Column, Table } from "@/app/_ui/table";
import type { KeptNote } from "@/db/queries/cell-notes";
import { formatCounted } from "@/lib/format/format-count";
import { fieldName } from "../_components/field-name";

interface Props {
  readonly notes: readonly KeptNote[];
  readonly most: number;
}

/** Cells that were not taken as they stood: what stood there, what was made of it, and why. */
export function CellNotes({ notes, most }: Props) {
  if (notes.length === 0) return null;
  const title = notes.length < most ? formatCounted(notes.length, "cell") : `The first ${formatCounted(most, "cell")}`;
  return (
    <details>
      <summary>{title} not taken as they stood</summary>
      <Table
        caption="Raw cells, what was made of them, and why"
        captionHidden
        columns={columns}
        rows={notes}
        rowKey={({ row, source, column, note }) => `${row} ${source} ${column} ${note}`}
      />
    </details>
  );
}

const columns: readonly Column<KeptNote>[] = [
  { key: "row", head: "Row", kind: "number", cell: ({ row }) => row },
  { key: "source", head: "Column", cell: ({ source }) => source },
  { key: "raw", head: "Stands there", cell: ({ raw }) => raw.slice(0, 80) },
  {
    key: "taken",
    head: "Taken as",
    cell: ({ column, taken }) => `${fieldName(column)}: ${taken === "" ? "blank" : taken.slice(0, 80)}`,
  },
  { key: "note", head: "Why", cell: ({ note }) => note },
];
