import { type Column, Table } from "@/app/_ui/table";
import type { LoadReport } from "@/db/writes/load-result";

type Row = LoadReport["problems"][number];

/** Each problem with its place and what to do; the first 200 of a long report. */
export function ProblemTable({ problems }: { readonly problems: readonly Row[] }) {
  return (
    <Table
      caption="Rows with problems"
      columns={columns}
      rows={problems}
      rowKey={(row) => `${row.row} ${row.column} ${row.problem}`}
    />
  );
}

const columns: readonly Column<Row>[] = [
  { key: "row", head: "Row", kind: "number", cell: (row) => row.row },
  { key: "column", head: "Column", cell: (row) => row.column || "the whole row" },
  { key: "value", head: "Value", cell: (row) => (row.value === "" ? "blank" : row.value.slice(0, 80)) },
  { key: "problem", head: "Problem", cell: (row) => row.problem },
  { key: "fix", head: "What to do", cell: (row) => row.fix },
];
