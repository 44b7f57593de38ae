import Link from "next/link";
import { Button } from "@/app/_ui/button";
import { type Column, Table } from "@/app/_ui/table";
import type { HeldRow } from "@/db/queries/batches";
import { formatCounted } from "@/lib/format/format-count";
import { putBack } from "./actions";

interface Props {
  readonly batch: number;
  readonly rows: readonly HeldRow[];
}

/** Rows that a person said are not to come in, why, and the way back. */
export function LeftOut({ batch, rows }: Props) {
  if (rows.length === 0) return null;
  const columns: readonly Column<HeldRow>[] = [
    {
      key: "row",
      head: "Row",
      cell: ({ row }) => <Link href={`/files/${batch}/held/${row}`}>{row}</Link>,
    },
    { key: "reason", head: "Left out because", cell: ({ reason }) => reason ?? "" },
    { key: "back", head: "Put back", cell: ({ row }) => <PutBack batch={batch} rows={[row]} /> },
  ];
  return (
    <details>
      <summary>Left out by hand: {formatCounted(rows.length, "row")}</summary>
      <Table
        caption="Rows left out by hand"
        captionHidden
        columns={columns}
        rows={rows}
        rowKey={({ row }) => String(row)}
      />
    </details>
  );
}

/** Lets rows that were left out wait again. */
export function PutBack({ batch, rows }: { readonly batch: number; readonly rows: readonly number[] }) {
  return (
    <form action={putBack}>
      <input type="hidden" name="batch" value={batch} />
      <input type="hidden" name="rows" value={rows.join(",")} />
      <Button weight="plain">
        Put back<span className="only-heard"> row {rows.join(", ")}</span>
      </Button>
    </form>
  );
}
