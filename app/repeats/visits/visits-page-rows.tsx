import { type Column, Table } from "@/app/_ui/table";
import type { VisitDimension } from "@/db/queries/visit-shares";
import { formatCount } from "@/lib/format/format-count";
import { describeShare } from "@/lib/format/format-share";
import { visitDimensionNames } from "./read-visits-address";
import { againstLimits, type ShareOf, type VisitRow } from "./visit-rows";

interface Props {
  readonly by: readonly VisitDimension[];
  readonly rows: readonly VisitRow[];
  readonly all: VisitRow;
}

/** First visits and returns by group, by name; a rank would be read as a verdict. */
export function VisitTable({ by, rows, all }: Props) {
  const columns: Column<VisitRow>[] = [
    ...by.map((dimension, i) => ({
      key: dimension,
      head: visitDimensionNames[dimension],
      cell: (row: VisitRow) => row.names[i] ?? "",
    })),
    { key: "jobs", head: "Closed jobs", kind: "number", cell: ({ jobs }) => formatCount(jobs) },
    { key: "first", head: "Done at the first visit", cell: ({ firstVisit }) => shareWords(firstVisit) },
    {
      key: "first-limits",
      head: "Against all",
      cell: ({ firstVisit }) => (firstVisit === undefined ? "" : againstLimits(firstVisit)),
      wideOnly: true,
    },
    { key: "back", head: "Returned to", cell: ({ calledBack }) => shareWords(calledBack) },
    {
      key: "back-limits",
      head: "Against all",
      cell: ({ calledBack }) => (calledBack === undefined ? "" : againstLimits(calledBack)),
      wideOnly: true,
    },
  ];
  return (
    <Table caption="First visits and returns" columns={columns} rows={rows} rowKey={({ key }) => key} closing={[all]} />
  );
}

function shareWords(share: ShareOf | undefined): string {
  if (share === undefined) return "no visits on file";
  return `${describeShare(share.point, share.low, share.high)}, ${formatCount(share.events)} of ${formatCount(share.trials)}`;
}
