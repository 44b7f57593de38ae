import { type Column, Table } from "@/app/_ui/table";
import type { HeldRow } from "@/db/queries/batches";
import { formatCounted } from "@/lib/format/format-count";

interface Props {
  readonly rows: readonly HeldRow[];
  readonly total: number;
}

/** Rows that are no record, or that count as nothing, as they stand. */
export function NoRecord({ rows, total }: Props) {
  if (rows.length === 0) return null;
  return (
    <details>
      <summary>Left out: {formatCounted(total, "row")}, each with its reason</summary>
      <Table
        caption="Rows that were left out"
        captionHidden
        columns={columns}
        rows={rows}
        rowKey={({ row }) => String(row)}
      />
    </details>
  );
}

const columns: readonly Column<HeldRow>[] = [
  { key: "row", head: "Row", kind: "number", cell: ({ row }) => row },
  { key: "reason", head: "Why", cell: ({ reason }) => reason ?? "" },
  {
    key: "cells",
    head: "Says",
    cell: ({ cells }) =>
      Object.values(cells)
        .filter((cell) => cell.trim() !== "")
        .join(" · ")
        .slice(0, 200),
  },
];
