import { type Column, Table } from "@/app/_ui/table";
import type { OrderEvent } from "@/db/queries/part-orders";

/** What was done with the line, in order. */
export function EventTable({ events }: { readonly events: readonly OrderEvent[] }) {
  return (
    <Table caption="What was done with it" columns={columns} rows={events} rowKey={({ version }) => String(version)} />
  );
}

const columns: readonly Column<OrderEvent>[] = [
  { key: "at", head: "When", cell: ({ at }) => `${at.slice(0, 16)} UTC` },
  { key: "what", head: "What", cell: (event) => eventWords(event) },
  { key: "by", head: "By", cell: ({ by }) => by },
];

function eventWords({ what, detail }: OrderEvent): string {
  const of = (name: string) =>
    typeof detail[name] === "string" || typeof detail[name] === "number" ? String(detail[name]) : undefined;
  switch (what) {
    case "added":
      return `Added: ${of("quantity")} pieces`;
    case "changed":
      return `Changed: ${of("quantity")} pieces${of("expectedOn") === undefined ? "" : `, due ${of("expectedOn")}`}`;
    case "ordered":
      return `Ordered on ${of("orderedOn")}${of("expectedOn") === undefined ? "" : `, due ${of("expectedOn")}`}`;
    case "received":
      return `${of("pieces")} came on ${of("receivedOn")}${of("place") === "" ? "" : ` to ${of("place")}’s truck`}`;
    case "cancelled":
      return "Cancelled";
    default:
      return "Taken up again";
  }
}
