import Link from "next/link";
import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import type { JobListRow } from "@/db/queries/job-list";
import { causes } from "@/lib/domain/cause";
import { formatPlainDay } from "@/lib/format/format-day";

export function JobTable({ rows }: { readonly rows: readonly JobListRow[] }) {
  return <Table caption="Jobs" captionHidden columns={columns} rows={rows} rowKey={(row) => row.jobNumber} />;
}

const columns: readonly Column<JobListRow>[] = [
  {
    key: "job",
    head: "Job",
    cell: (row) => (
      <Link href={`/jobs/${encodeURIComponent(row.jobNumber)}`} className="nowrap">
        {row.jobNumber}
      </Link>
    ),
  },
  {
    key: "closed",
    head: "Completed",
    cell: (row) => <span className="nowrap">{formatPlainDay(row.completedOn)}</span>,
  },
  { key: "unit", head: "Unit", cell: (row) => <Tag href={`/units/${row.unitId}`}>{row.serial ?? "no serial"}</Tag> },
  { key: "model", head: "Maker and model", wideOnly: true, cell: (row) => `${row.maker} ${row.model}` },
  { key: "complaint", head: "Complaint", cell: (row) => row.complaint || row.symptom || "–" },
  { key: "finding", head: "Finding", cell: (row) => findingWords(row) },
  { key: "codes", head: "Fault codes", wideOnly: true, cell: (row) => row.faultCodes.join(", ") || "–" },
  { key: "parts", head: "Parts", kind: "number", wideOnly: true, cell: (row) => row.parts },
  { key: "readings", head: "Readings", kind: "number", wideOnly: true, cell: (row) => row.readings },
  { key: "technician", head: "Technician", wideOnly: true, cell: (row) => row.technician ?? "–" },
];

/** What was at fault, and whether the job counts as a failure of it. */
function findingWords(row: JobListRow): string {
  if (row.status !== "closed") return `${row.status}: not counted`;
  const component = row.component ?? "no component named";
  if (row.countedAs === "failure") return `${component} failed`;
  return row.cause === "component" ? "a component failed, not said which" : `${causes[row.cause].name} (${component})`;
}
