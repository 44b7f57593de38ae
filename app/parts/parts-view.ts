import type { ListedPart } from "@/db/queries/part-list";
import { normalised } from "@/lib/domain/normalised";
import { formatCounted } from "@/lib/format/format-count";
import { type PartLine, partLine } from "@/lib/stock/part-line";
import type { PartsFilter } from "./read-parts-address";

export interface PartRow extends ListedPart {
  readonly line: PartLine;
}

/** Needs ordering first and surest first; then those of which nobody knows how many there are; then the rest by use. */
export function partRows(parts: readonly ListedPart[]): readonly PartRow[] {
  return parts
    .map((part) => ({ ...part, line: partLine(part.plan, part) }))
    .sort(
      (a, b) =>
        rankOf(a.line) - rankOf(b.line) ||
        chanceOf(b.line) - chanceOf(a.line) ||
        b.usedLastYear - a.usedLastYear ||
        a.partNumber.localeCompare(b.partNumber, "en"),
    );
}

export function filteredRows(rows: readonly PartRow[], { search, component, show }: PartsFilter): readonly PartRow[] {
  const text = search?.toLowerCase();
  const key = normalised(search ?? "");
  return rows.filter(
    (row) =>
      (component === undefined || (row.component ?? "none") === component) &&
      (show === undefined || showOf(row.line) === show) &&
      (text === undefined || row.description.toLowerCase().includes(text) || (key !== "" && row.partKey.includes(key))),
  );
}

export function partsFinding(rows: readonly PartRow[]): string {
  if (rows.length === 0) return "No parts used yet";
  const short = rows.filter(({ line }) => showOf(line) === "order").length;
  const counted = rows.filter(({ onHand }) => onHand !== undefined).length;
  if (counted === 0)
    return `${formatCounted(rows.length, "part is", "parts are")} used; nobody has said yet how many lie on the shelf`;
  if (short === 0) return `None of the ${formatCounted(counted, "part")} that are kept has to be ordered today`;
  return `${formatCounted(short, "part has", "parts have")} to be ordered today`;
}

export function needsOrder(line: PartLine): line is Extract<PartLine, { kind: "order" | "negative-stock" }> {
  return (line.kind === "order" || line.kind === "negative-stock") && line.pieces > 0;
}

function showOf(line: PartLine): "order" | "not-counted" | "enough" {
  if (needsOrder(line)) return "order";
  return line.kind === "not-counted" || line.kind === "no-need-known" ? "not-counted" : "enough";
}

function rankOf(line: PartLine): number {
  if (line.kind === "negative-stock") return 0;
  return { order: 0, enough: 1, "not-counted": 2 }[showOf(line)];
}

function chanceOf(line: PartLine): number {
  return "chanceShort" in line ? line.chanceShort : 0;
}
