import Link from "next/link";
import { type Column, Table } from "@/app/_ui/table";
import type { LeakTotal } from "@/db/queries/money-unclaimed";
import { formatCount } from "@/lib/format/format-count";
import { formatMoney } from "@/lib/format/format-money";
import { leakClasses, leakName, type UnclaimedAddress, unclaimedHref } from "../read-unclaimed-address";

interface Props {
  readonly totals: readonly LeakTotal[];
  readonly inForce: UnclaimedAddress["inForce"];
}

/** How the money was lost, each way by itself, over the whole history. */
export function LeakTotals({ totals, inForce }: Props) {
  const rows = leakClasses.flatMap((leak) => totals.filter((total) => total.leak === leak));
  return (
    <Table
      caption="How it was missed, over the whole history"
      columns={columns(inForce)}
      rows={rows}
      rowKey={({ leak, currency }) => `${leak} ${currency}`}
    />
  );
}

function columns(inForce: Props["inForce"]): Column<LeakTotal>[] {
  return [
    {
      key: "leak",
      head: "How it was missed",
      cell: ({ leak }) => <Link href={unclaimedHref(inForce, { class: leak })}>{leakName(leak)}</Link>,
    },
    { key: "rows", head: "Cases", kind: "number", cell: ({ rows }) => formatCount(rows) },
    {
      key: "missing",
      head: "Something missing",
      kind: "number",
      wideOnly: true,
      cell: (row) => formatCount(row.missing),
    },
    { key: "cents", head: "Amount", kind: "number", cell: formatMoney },
  ];
}
