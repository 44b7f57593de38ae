import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import { formatCount } from "@/lib/format/format-count";
import { formatMoney } from "@/lib/format/format-money";
import { partHref } from "../read-parts-address";
import type { LoadedTruck, TruckView } from "./load-truck";
import { inHundred } from "./truck-words";

interface Row {
  readonly key: string;
  readonly partNumber: string;
  readonly description: string;
  readonly carried: number;
  readonly add: number;
  readonly cents: number;
  /** Visits that its pieces, in their turns, completed more. */
  readonly gained: number;
}

/** What to add, best first, with what it does. */
export function TruckTable({ view, truck }: { readonly view: TruckView; readonly truck: LoadedTruck }) {
  const { currency, technician } = view;
  const { visits } = truck.stock;
  const columns: readonly Column<Row>[] = [
    { key: "part", head: "Part", cell: (row) => <Tag href={partHref(row.key)}>{row.partNumber}</Tag> },
    { key: "name", head: "Name", wideOnly: true, cell: ({ description }) => description },
    { key: "there", head: "There now", kind: "number", wideOnly: true, cell: ({ carried }) => formatCount(carried) },
    { key: "add", head: "Add", kind: "number", cell: ({ add }) => formatCount(add) },
    { key: "cost", head: "Cost", kind: "number", cell: ({ cents }) => formatMoney({ cents, currency }) },
    {
      key: "gain",
      head: "More visits done at once",
      kind: "number",
      cell: ({ gained }) => (gained / visits < 0.005 ? "under 1 in 100" : inHundred(gained, visits)),
    },
  ];
  return (
    <Table
      caption={`To put into ${technician}’s truck, best first`}
      columns={columns}
      rows={rowsOf(truck)}
      rowKey={({ key }) => key}
    />
  );
}

function rowsOf({ stock, parts }: LoadedTruck): readonly Row[] {
  const rows = new Map<string, Row>();
  let before = stock.before;
  for (const { added, after } of stock.steps) {
    for (const key of added) {
      const part = parts.get(key);
      if (part === undefined) continue;
      const row = rows.get(key);
      rows.set(key, {
        key,
        partNumber: part.partNumber,
        description: part.description,
        carried: part.carried,
        add: (row?.add ?? 0) + 1,
        cents: (row?.cents ?? 0) + (part.unitCostCents ?? 0),
        gained: (row?.gained ?? 0) + (after - before) / added.length,
      });
    }
    before = after;
  }
  return [...rows.values()];
}
