import Link from "next/link";
import { DayRuler } from "@/app/_charts/day-ruler";
import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import type { UnclaimedListRow } from "@/db/queries/money-unclaimed";
import { type Day, daysBetween } from "@/lib/calendar/day";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";
import { ChooseRow } from "../../_components/choose-row";
import { leakName } from "../read-unclaimed-address";

/** Work that can become a draft has a box; a claim that exists leads to itself. */
export function UnclaimedTable({ rows, today }: { readonly rows: readonly UnclaimedListRow[]; readonly today: Day }) {
  return (
    <Table
      caption="Covered work without its pay: what can still be had first, the most urgent on top"
      columns={columns(today)}
      rows={rows}
      rowKey={(row) => `${row.jobNumber} ${row.policyKey} ${row.lostAs}`}
    />
  );
}

function columns(today: Day): Column<UnclaimedListRow>[] {
  return [
    { key: "job", head: "Job", cell: (row) => <JobCell row={row} /> },
    { key: "payer", head: "Payer", wideOnly: true, cell: (row) => row.payer },
    {
      key: "unit",
      head: "Unit",
      wideOnly: true,
      cell: (row) => <Tag href={`/units/${row.unitId}`}>{row.serial ?? "no serial"}</Tag>,
    },
    { key: "why", head: "Why", wideOnly: true, cell: (row) => <WhyCell row={row} /> },
    { key: "due", head: "Last day", cell: (row) => <DueCell row={row} today={today} /> },
    {
      key: "amount",
      head: "Amount",
      kind: "number",
      cell: ({ cents, currency }) => formatMoney({ cents: cents.all, currency }),
    },
  ];
}

function JobCell({ row }: { readonly row: UnclaimedListRow }) {
  const { jobNumber, claimNumber, policyKey, payer, leak } = row;
  if (claimNumber !== undefined) return <Tag href={`/claims/${encodeURIComponent(claimNumber)}`}>{claimNumber}</Tag>;
  return (
    <span className="nowrap">
      {leak !== "late" && <ChooseRow value={`${jobNumber} ${policyKey}`} label={`job ${jobNumber}, ${payer}`} />}
      <Link href={`/claims/for/${encodeURIComponent(jobNumber)}`}>{jobNumber}</Link>
    </span>
  );
}

function WhyCell({ row: { leak, lostAs, reason, missing } }: { readonly row: UnclaimedListRow }) {
  return (
    <details>
      <summary>
        {leakName(lostAs)}
        {leak === "late" && ", now late"}
        {missing.length > 0 && ` · ${missing.length} missing`}
      </summary>
      <p className="small">{reason}</p>
      {missing.length > 0 && (
        <ul className="small">
          {missing.map((fix) => (
            <li key={fix}>{fix}</li>
          ))}
        </ul>
      )}
    </details>
  );
}

function DueCell({ row: { completedOn, dueOn }, today }: { readonly row: UnclaimedListRow; readonly today: Day }) {
  if (dueOn === undefined) return "no clock";
  const late = daysBetween(dueOn, today);
  if (late > 0) return `${formatPlainDay(dueOn)}, ${formatCounted(late, "day")} ago`;
  return <DayRuler from={completedOn} due={dueOn} today={today} />;
}
