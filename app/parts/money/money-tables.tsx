import Link from "next/link";
import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import type { ComponentTotal, HeldPart, TiedUp } from "@/db/queries/part-money";
import type { Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import { monthWords } from "@/lib/figures/fan";
import { monthAfter } from "@/lib/forecast/forecast-month";
import type { StoredTotal, TotalMonth } from "@/lib/forecast/stored-total";
import { run } from "@/lib/format/describe-need";
import { formatCount } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { placeName } from "../[part]/stock-words";
import { likely, wholeMoney, wide } from "./money-words";

/** Spend month by month for a year. */
export function MonthTable({
  total,
  forecastFrom,
  currency,
}: {
  readonly total: StoredTotal;
  readonly forecastFrom: Day;
  readonly currency: Currency;
}) {
  const rows = total.months
    .slice(0, 12)
    .map((month, i) => ({ key: String(i), name: monthWords(monthAfter(forecastFrom, i)), month }));
  return (
    <Table
      caption={`Expected spend on parts${total.withoutCost > 0 ? `; the cost of ${formatCount(total.withoutCost)} of ${formatCount(total.parts)} parts is not known` : ""}`}
      columns={columnsOf("Month", currency)}
      rows={rows}
      closing={[{ key: "year", name: "Twelve months", month: total.year }]}
      rowKey={({ key }) => key}
    />
  );
}

interface Row {
  readonly key: string;
  readonly name: string;
  readonly href?: string;
  readonly month: TotalMonth;
}

function columnsOf(first: string, currency: Currency): readonly Column<Row>[] {
  return [
    {
      key: "name",
      head: first,
      cell: ({ name, href }) => (href === undefined ? name : <Link href={href}>{name}</Link>),
    },
    { key: "likely", head: "Most likely", kind: "number", cell: ({ month }) => likely(month.cents, currency) },
    { key: "wide", head: "9 times in 10", kind: "number", cell: ({ month }) => wide(month.cents, currency) },
    {
      key: "pieces",
      head: "Pieces, 9 in 10",
      kind: "number",
      wideOnly: true,
      cell: ({ month }) => run(month.pieces.low90, month.pieces.high90),
    },
  ];
}

/** The next twelve months by component; the sum is that of all futures, not of the ranges. */
export function ComponentTable({
  totals,
  currency,
}: {
  readonly totals: readonly ComponentTotal[];
  readonly currency: Currency;
}) {
  const rowOf = ({ key, name, total }: ComponentTotal): Row => ({
    key,
    name: key === "all" ? "All parts" : (name ?? (key === "none" ? "No component on file" : key)),
    href: key === "all" ? "/parts" : `/parts?component=${encodeURIComponent(key)}`,
    month: total.year,
  });
  const rows = totals.filter(({ key }) => key !== "all").map(rowOf);
  return (
    <details>
      <summary>By component, twelve months</summary>
      <Table
        caption="Parts add up to components and components to all parts future by future; their ranges do not add up"
        columns={columnsOf("Component", currency)}
        rows={rows.toSorted((a, b) => b.month.cents.mean - a.month.cents.mean)}
        closing={totals.filter(({ key }) => key === "all").map(rowOf)}
        rowKey={({ key }) => key}
      />
    </details>
  );
}

export function TiedUpTable({ tiedUp, currency }: { readonly tiedUp: readonly TiedUp[]; readonly currency: Currency }) {
  if (tiedUp.length === 0) return <p>No stock has been entered yet.</p>;
  const columns: readonly Column<TiedUp>[] = [
    { key: "place", head: "Place", cell: ({ place }) => (place === "all" ? "All places" : placeName(place)) },
    { key: "pieces", head: "Pieces", kind: "number", cell: ({ pieces }) => formatCount(pieces) },
    { key: "cents", head: "At today’s cost", kind: "number", cell: ({ cents }) => wholeMoney(cents, currency) },
  ];
  const all = {
    place: "all",
    pieces: tiedUp.reduce((sum, { pieces }) => sum + pieces, 0),
    cents: tiedUp.reduce((sum, { cents }) => sum + cents, 0),
    partsWithoutCost: 0,
  };
  return (
    <Table caption="What lies there" columns={columns} rows={tiedUp} closing={[all]} rowKey={({ place }) => place} />
  );
}

export function HeldTable({ held, currency }: { readonly held: readonly HeldPart[]; readonly currency: Currency }) {
  const columns: readonly Column<HeldPart>[] = [
    {
      key: "claim",
      head: "Claim",
      cell: ({ claimNumber }) => <Tag href={`/claims/${encodeURIComponent(claimNumber)}`}>{claimNumber}</Tag>,
    },
    { key: "payer", head: "Payer", wideOnly: true, cell: ({ payer }) => payer },
    { key: "parts", head: "Failed part", cell: ({ parts }) => parts },
    { key: "until", head: "Keep until", cell: ({ keepUntil }) => formatPlainDay(keepUntil) },
    {
      key: "open",
      head: "Not paid yet",
      kind: "number",
      cell: ({ openPartsCents }) => wholeMoney(openPartsCents, currency),
    },
  ];
  return (
    <Table caption="Failed parts to keep" columns={columns} rows={held} rowKey={({ claimNumber }) => claimNumber} />
  );
}
