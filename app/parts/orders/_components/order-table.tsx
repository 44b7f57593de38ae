import Link from "next/link";
import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import type { OrderLine } from "@/db/queries/part-orders";
import type { Day } from "@/lib/calendar/day";
import { formatCount } from "@/lib/format/format-count";
import { partHref } from "../../read-parts-address";
import { amountWords, stateWords } from "../order-words";

interface Props {
  readonly caption: string;
  readonly lines: readonly OrderLine[];
  readonly today: Day;
}

export function OrderTable({ caption, lines, today }: Props) {
  const columns: readonly Column<OrderLine>[] = [
    { key: "part", head: "Part", cell: (line) => <Tag href={partHref(line.partKey)}>{line.partNumber}</Tag> },
    { key: "name", head: "Name", wideOnly: true, cell: ({ description }) => description },
    { key: "pieces", head: "Pieces", kind: "number", cell: ({ quantity }) => formatCount(quantity) },
    { key: "supplier", head: "Supplier", wideOnly: true, cell: ({ supplier }) => supplier || "–" },
    { key: "amount", head: "Amount", kind: "number", wideOnly: true, cell: amountWords },
    {
      key: "state",
      head: "Where it stands",
      cell: (line) => (
        <span>
          {stateWords(line, today)}{" "}
          <Link href={`/parts/orders/${line.orderId}`} className="no-print">
            {actWord(line)}
          </Link>
        </span>
      ),
    },
    {
      key: "why",
      head: "Why so many",
      wideOnly: true,
      cell: ({ why, note }) => [why, note].filter(Boolean).join(" ") || "–",
    },
  ];
  return <Table caption={caption} columns={columns} rows={lines} rowKey={({ orderId }) => String(orderId)} />;
}

function actWord({ state }: OrderLine): string {
  return { draft: "Order or change", ordered: "Receive or change", received: "Look", cancelled: "Look" }[state];
}
