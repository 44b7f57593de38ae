import Link from "next/link";
import { type Column, Table } from "@/app/_ui/table";
import type { SuggestedCallback } from "@/db/queries/callbacks";
import { formatCounted } from "@/lib/format/format-count";

interface Props {
  readonly rows: readonly SuggestedCallback[];
  readonly total: number;
}

/** Jobs of the load that seem to return to an earlier one though the file enters them as new. */
export function Callbacks({ rows, total }: Props) {
  if (total === 0) return null;
  return (
    <details>
      <summary>
        {formatCounted(total, "job looks like a callback", "jobs look like callbacks")} entered as new:{" "}
        {rows.length < total ? `the first ${rows.length}` : "all of them"}
      </summary>
      <Table
        caption="Jobs that return to an earlier job by the rule for repeats"
        captionHidden
        columns={columns}
        rows={rows}
        rowKey={({ jobNumber }) => jobNumber}
      />
    </details>
  );
}

const link = (number: string) => <Link href={`/jobs/${encodeURIComponent(number)}`}>{number}</Link>;
const columns: readonly Column<SuggestedCallback>[] = [
  { key: "job", head: "Job", cell: ({ jobNumber }) => link(jobNumber) },
  { key: "earlier", head: "Seems to return to", cell: ({ earlier }) => link(earlier) },
  { key: "days", head: "Days after it", kind: "number", cell: ({ days }) => days },
];
