import Link from "next/link";
import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { adviceWords, needWords, onHandWords, onOrderWords } from "../line-words";
import { needsOrder, type PartRow } from "../parts-view";
import { partHref } from "../read-parts-address";
import { AdviceMark } from "./advice-mark";

interface Props {
  readonly caption: string;
  readonly rows: readonly PartRow[];
}

export function PartTable({ caption, rows }: Props) {
  return <Table caption={caption} columns={columns} rows={rows} rowKey={({ partKey }) => partKey} />;
}

const columns: readonly Column<PartRow>[] = [
  { key: "part", head: "Part", cell: (row) => <Tag href={partHref(row.partKey)}>{row.partNumber}</Tag> },
  { key: "name", head: "Name", wideOnly: true, cell: (row) => row.description },
  { key: "hand", head: "On hand", cell: (row) => <span className="figures">{onHandWords(row)}</span> },
  {
    key: "order",
    head: "On order",
    wideOnly: true,
    cell: (row) => <span className="figures">{onOrderWords(row)}</span>,
  },
  { key: "need", head: "Needed until the next delivery", wideOnly: true, cell: (row) => needWords(row.plan) },
  {
    key: "advice",
    head: "What to do",
    cell: (row) => (
      <span>
        <AdviceMark line={row.line} /> {adviceWords(row)}{" "}
        {needsOrder(row.line) && row.drafted === 0 && (
          <Link href={`/parts/orders/new?part=${encodeURIComponent(row.partKey)}`} className="no-print">
            Add to the order list
          </Link>
        )}
      </span>
    ),
  },
  {
    key: "used",
    head: "Used in 12 months",
    wideOnly: true,
    cell: (row) => `${formatCount(row.usedLastYear)} on ${formatCounted(row.jobsLastYear, "job")}`,
  },
];
