import Link from "next/link";
import { DayRuler } from "@/app/_charts/day-ruler";
import type { ClaimableJob } from "@/app/_claims/load-claimable";
import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import type { Day } from "@/lib/calendar/day";
import { formatMoney } from "@/lib/format/format-money";
import { ChooseRow } from "./choose-row";

/** Covered work that nobody has claimed, the most urgent first. */
export function ClaimableTable({ rows, today }: { readonly rows: readonly ClaimableJob[]; readonly today: Day }) {
  return (
    <Table
      caption="Closed jobs with covered work and no claim, still inside the filing window"
      columns={columns(today)}
      rows={rows}
      rowKey={(row) => `${row.jobNumber} ${row.claim.source.policy}`}
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
          <ChooseRow
            value={`${row.jobNumber} ${row.claim.source.policy}`}
            label={`job ${row.jobNumber}, ${row.claim.source.payerName}`}
          />
          <Link href={`/claims/for/${encodeURIComponent(row.jobNumber)}`}>{row.jobNumber}</Link>
        </span>
      ),
    },
    { key: "payer", head: "Payer", cell: (row) => row.claim.source.payerName },
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
      cell: (row) => <DayRuler from={row.completedOn} due={row.claim.filing.lastDay} today={today} />,
    },
    {
      key: "evidence",
      head: "In place",
      wideOnly: true,
      cell: (row) =>
        `${row.claim.tasks.filter((task) => task.state !== "missing").length} of ${row.claim.tasks.length}`,
    },
    {
      key: "amount",
      head: "Amount",
      kind: "number",
      cell: (row) => formatMoney({ cents: row.claim.totalCents, currency: row.claim.currency }),
    },
  ];
}
