import Link from "next/link";
import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import type { OlderStock } from "@/db/queries/older-stock";
import type { ListedPart } from "@/db/queries/part-list";
import { type Day, daysBetween } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import { describeChance } from "@/lib/format/describe-need";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatDaysLeft, formatPlainDay } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";
import { onHandWords } from "../line-words";
import { partHref } from "../read-parts-address";
import type { IdleRow } from "./idle-rows";

export function IdleTable({ rows, currency }: { readonly rows: readonly IdleRow[]; readonly currency: Currency }) {
  const columns: readonly Column<IdleRow>[] = [
    { key: "part", head: "Part", cell: (row) => <Tag href={partHref(row.partKey)}>{row.partNumber}</Tag> },
    { key: "name", head: "Name", wideOnly: true, cell: ({ description }) => description },
    { key: "hand", head: "On hand", cell: onHandWords },
    { key: "why", head: "Why it is idle", cell: whyWords },
    {
      key: "used",
      head: "Last used",
      wideOnly: true,
      cell: ({ lastUsedOn }) => (lastUsedOn === undefined ? "never" : formatPlainDay(lastUsedOn)),
    },
    {
      key: "money",
      head: "Idle money",
      kind: "number",
      cell: ({ cents }) => (cents === undefined ? "cost not known" : formatMoney({ cents, currency })),
    },
  ];
  return (
    <Table
      caption="Dead, or too many, the dearest first"
      columns={columns}
      rows={rows}
      rowKey={({ partKey }) => partKey}
    />
  );
}

function whyWords({ idle, plan }: IdleRow): string {
  if (idle.kind === "dead")
    return `Nobody asks for one within two years in ${describeChance(plan.twoYears.chanceOfNone)} futures.`;
  return `${formatCount(idle.enough)} last two years in 95 of 100 futures; ${formatCount(idle.pieces)} are more than that.`;
}

export function OlderTable({ rows }: { readonly rows: readonly OlderStock[] }) {
  return (
    <Table
      caption="Older numbers that still lie there"
      columns={[
        {
          key: "part",
          head: "Part",
          cell: ({ partKey, partNumber }) => <Tag href={partHref(partKey)}>{partNumber}</Tag>,
        },
        { key: "hand", head: "On hand", kind: "number", cell: ({ onHand }) => formatCount(onHand) },
      ]}
      rows={rows}
      rowKey={({ partKey }) => partKey}
    />
  );
}

export function LastBuyTable({ rows, today }: { readonly rows: readonly ListedPart[]; readonly today: Day }) {
  const columns: readonly Column<ListedPart>[] = [
    { key: "part", head: "Part", cell: (row) => <Tag href={partHref(row.partKey)}>{row.partNumber}</Tag> },
    { key: "name", head: "Name", wideOnly: true, cell: ({ description }) => description },
    {
      key: "until",
      head: "Last day to order",
      cell: ({ lastBuyOn }) =>
        lastBuyOn === undefined ? "" : `${formatPlainDay(lastBuyOn)}, ${formatDaysLeft(daysBetween(today, lastBuyOn))}`,
    },
    { key: "hand", head: "On hand", cell: onHandWords },
    {
      key: "used",
      head: "Used in 12 months",
      kind: "number",
      wideOnly: true,
      cell: ({ usedLastYear }) => formatCount(usedLastYear),
    },
    {
      key: "buy",
      head: "To the end of the fleet’s life",
      cell: ({ partKey, plan }) => (
        <span>
          Two years need up to {formatCounted(plan.twoYears.enough, "piece")} in 95 of 100 futures.{" "}
          <Link href={`${partHref(partKey)}/last-buy`}>How many to the end</Link>
        </span>
      ),
    },
  ];
  return (
    <Table
      caption="Parts that will no longer be made"
      columns={columns}
      rows={rows}
      rowKey={({ partKey }) => partKey}
    />
  );
}
