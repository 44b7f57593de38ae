import Link from "next/link";
import { DayRuler } from "@/app/_charts/day-ruler";
import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import type { ClaimableJob } from "@/db/queries/claimable";
import type { Day } from "@/lib/calendar/day";
import { formatCounted } from "@/lib/format/format-count";
import { formatMoney } from "@/lib/format/format-money";
import { ChooseRow } from "./choose-row";

/** Covered work that nobody has claimed, the most urgent first. */
export function ClaimableTable({ rows, today }: { readonly rows: readonly ClaimableJob[]; readonly today: Day }) {
  return (
    <Table
      caption="Closed jobs with covered work and no claim, still inside the filing window"
      columns={columns(today)}
      rows={rows}
      rowKey={(row) => `${row.jobNumber} ${row.policyKey}`}
    />
  );
}

function columns(today: Day): Column<ClaimableJob>[] {
  return [
    {
      key: "job",
      head: "Job",
      cell: (row) => (
        <span className="nowrap">
          <ChooseRow value={`${row.jobNumber} ${row.policyKey}`} label={`job ${row.jobNumber}, ${row.payer}`} />
          <Link href={`/claims/for/${encodeURIComponent(row.jobNumber)}`}>{row.jobNumber}</Link>
        </span>
      ),
    },
    { key: "payer", head: "Payer", cell: (row) => row.payer },
    {
      key: "unit",
      head: "Unit",
      wideOnly: true,
      cell: (row) => <Tag href={`/units/${row.unitId}`}>{row.serial ?? "no serial"}</Tag>,
    },
    { key: "component", head: "Component", wideOnly: true, cell: (row) => row.component?.replaceAll("_", " ") ?? "–" },
    {
      key: "due",
      head: "File by",
      cell: (row) => <DayRuler from={row.completedOn} due={row.lastDay} today={today} />,
    },
    {
      key: "missing",
      head: "Missing",
      wideOnly: true,
      cell: ({ missing }) => (missing.length === 0 ? "nothing" : formatCounted(missing.length, "thing")),
    },
    {
      key: "amount",
      head: "Amount",
      kind: "number",
      cell: formatMoney,
    },
  ];
}
