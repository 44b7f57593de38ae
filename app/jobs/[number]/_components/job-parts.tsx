import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import type { JobRecord, PartLine } from "@/lib/domain/job";
import { formatMoney } from "@/lib/format/format-money";

export function JobParts({ record: { partLines } }: { readonly record: JobRecord }) {
  if (partLines.length === 0) return <p>No part was used.</p>;
  return <Table caption="Parts" columns={columns} rows={partLines} rowKey={(line) => String(line.line)} />;
}

const columns: readonly Column<PartLine>[] = [
  { key: "part", head: "Part", cell: (line) => <Tag>{line.partNumber}</Tag> },
  {
    key: "name",
    head: "Name",
    cell: (line) =>
      `${line.description || "no name given"}${line.role === "fitted" ? "" : ` (${line.role.replaceAll("_", " ")})`}`,
  },
  { key: "quantity", head: "Quantity", kind: "number", cell: (line) => line.quantity },
  { key: "cost", head: "Cost each", kind: "number", cell: (line) => formatMoney(line.unitCost) },
  {
    key: "invoice",
    head: "Invoice and line",
    wideOnly: true,
    cell: (line) =>
      [line.distributor, line.invoiceNumber, line.invoiceLine].filter((part) => part !== undefined).join(" / ") ||
      "none on file",
  },
];
