import Link from "next/link";
import { ButtonLink } from "@/app/_ui/button-link";
import { type Column, Table } from "@/app/_ui/table";
import type { LedgerEntry, PartPage, StockPlace } from "@/db/queries/part-page";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { kindWords, placeName } from "../stock-words";

/** Where pieces lie, and every entry that brought them there. */
export function StockLedger({ part }: { readonly part: PartPage }) {
  const { places, movements, movementsInAll, partKey } = part;
  return (
    <section className="stack-tight">
      <h2>Stock</h2>
      {places.length === 0 ? (
        <p>Nobody has entered any yet. Count what lies on the shelf and in the trucks, then what to order follows.</p>
      ) : (
        <Table
          caption="Where it lies"
          columns={placeColumns}
          rows={places}
          rowKey={({ partNumber, place }) => `${partNumber} ${place}`}
        />
      )}
      <div className="cluster no-print">
        <ButtonLink href={`/parts/${encodeURIComponent(partKey)}/stock`}>Count, receive, move, scrap</ButtonLink>
      </div>
      {movements.length > 0 && (
        <details>
          <summary>Ledger: {formatCounted(movementsInAll, "entry", "entries")}</summary>
          <Table
            caption={
              movements.length < movementsInAll
                ? `The latest ${formatCount(movements.length)} entries, newest first`
                : "All entries, newest first"
            }
            columns={entryColumns}
            rows={movements}
            rowKey={({ movementId }) => String(movementId)}
          />
        </details>
      )}
    </section>
  );
}

const placeColumns: readonly Column<StockPlace>[] = [
  {
    key: "place",
    head: "Place",
    cell: ({ place, isOlder, partNumber }) =>
      `${placeName(place)}${isOlder ? ` — older number ${partNumber}, not counted for ordering` : ""}`,
  },
  { key: "hand", head: "On hand", kind: "number", cell: ({ onHand }) => formatCount(onHand) },
  { key: "aside", head: "Put aside", kind: "number", cell: ({ reserved }) => formatCount(reserved) },
  {
    key: "counted",
    head: "Last counted",
    cell: ({ lastCountedOn }) => (lastCountedOn === undefined ? "never" : formatPlainDay(lastCountedOn)),
  },
];

const entryColumns: readonly Column<LedgerEntry>[] = [
  { key: "on", head: "Day", cell: ({ happenedOn }) => formatPlainDay(happenedOn) },
  { key: "what", head: "What", cell: (entry) => kindWords[entry.kind] },
  { key: "place", head: "Place", wideOnly: true, cell: ({ place }) => placeName(place) },
  { key: "change", head: "Change", kind: "number", cell: ({ quantity, reserved }) => signed(quantity, reserved) },
  { key: "after", head: "Then there", kind: "number", cell: ({ after }) => formatCount(after) },
  {
    key: "of",
    head: "Of",
    wideOnly: true,
    cell: ({ jobNumber, orderId, note, by }) => (
      <span>
        {jobNumber !== undefined && <Link href={`/jobs/${encodeURIComponent(jobNumber)}`}>job {jobNumber}</Link>}
        {orderId !== undefined && <Link href={`/parts/orders/${orderId}`}>order {orderId}</Link>}{" "}
        {[note, `entered by ${by}`].filter((words) => words !== "").join(", ")}
      </span>
    ),
  },
];

function signed(quantity: number, reserved: number): string {
  const plus = (count: number) => `${count > 0 ? "+" : "−"}${formatCount(Math.abs(count))}`;
  if (reserved !== 0) return `${plus(reserved)} put aside`;
  return quantity === 0 ? "0" : plus(quantity);
}
