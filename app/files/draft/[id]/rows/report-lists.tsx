import { type Column, Table } from "@/app/_ui/table";
import type { FieldChange, KeptEdit, LoadReport, RefusedRow } from "@/db/writes/load-result";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { fieldName } from "../../../_components/field-name";

interface Props {
  readonly report: LoadReport;
}

/** What changes, field by field. */
export function Changes({ report: { changes, rowsChanged } }: Props) {
  if (changes.length === 0) return null;
  return (
    <section className="stack-tight">
      <h2>What changes</h2>
      <Table
        caption={`Fields of the first rows that change, of ${formatCounted(rowsChanged, "row")}`}
        columns={changeColumns}
        rows={changes}
        rowKey={({ row, noun, column }) => `${row} ${noun} ${column}`}
      />
    </section>
  );
}

const changeColumns: readonly Column<FieldChange>[] = [
  { key: "row", head: "Row", kind: "number", cell: ({ row }) => row },
  { key: "of", head: "Of", cell: ({ noun, name }) => `${noun} ${name}` },
  { key: "field", head: "Field", cell: ({ column }) => fieldName(column) },
  { key: "before", head: "Is", cell: ({ before }) => before ?? "blank" },
  { key: "after", head: "Becomes", cell: ({ after }) => after ?? "blank" },
];

/** Fields that were edited here stay; what the file says is kept beside them. */
export function KeptEdits({ report: { keptEdits } }: Props) {
  if (keptEdits.length === 0) return null;
  return (
    <section className="stack-tight">
      <h2>Edited here, so it stays</h2>
      <Table
        caption="Fields that a person set here and of which the file says otherwise"
        columns={keptColumns}
        rows={keptEdits}
        rowKey={({ row, noun, column }) => `${row} ${noun} ${column}`}
      />
    </section>
  );
}

const keptColumns: readonly Column<KeptEdit>[] = [
  { key: "row", head: "Row", kind: "number", cell: ({ row }) => row },
  { key: "of", head: "Of", cell: ({ noun, name }) => `${noun} ${name}` },
  { key: "field", head: "Field", cell: ({ column }) => fieldName(column) },
  {
    key: "here",
    head: "Stays",
    cell: ({ before, by, editedAt }) => `${before ?? "blank"}, by ${by} on ${editedAt.slice(0, 10)}`,
  },
  { key: "file", head: "The file says", cell: ({ after }) => after ?? "blank" },
];

/** Rows that are no record, or that count as nothing. */
export function Refused({ report: { refused, rowsRefused } }: Props) {
  if (refused.length === 0) return null;
  return (
    <details>
      <summary>Left out: {formatCounted(rowsRefused, "row")}, each with its reason</summary>
      <Table
        caption={refused.length < rowsRefused ? `The first ${formatCount(refused.length)}` : "All of them"}
        captionHidden
        columns={refusedColumns}
        rows={refused}
        rowKey={({ row }) => String(row)}
      />
    </details>
  );
}

const refusedColumns: readonly Column<RefusedRow>[] = [
  { key: "row", head: "Row", kind: "number", cell: ({ row }) => row },
  { key: "reason", head: "Why", cell: ({ reason }) => reason },
];
