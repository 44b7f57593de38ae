import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import type { HeldPart } from "@/db/queries/money-recovery";
import { type Day, daysBetween } from "@/lib/calendar/day";
import { formatDaysLeft, formatPlainDay } from "@/lib/format/format-day";

/** Failed parts that a payer may still ask for, each with the words of its tag; prints as the list to tag them by. */
export function HeldParts({ held, today }: { readonly held: readonly HeldPart[]; readonly today: Day }) {
  if (held.length === 0) return null;
  return (
    <Table
      caption={`Failed parts to keep (${held.length})`}
      columns={columns(today)}
      rows={held}
      rowKey={(part) => `${part.claimNumber} ${part.partNumber} ${part.description}`}
    />
  );
}

function columns(today: Day): Column<HeldPart>[] {
  return [
    {
      key: "claim",
      head: "Claim",
      cell: ({ claimNumber }) => <Tag href={`/claims/${encodeURIComponent(claimNumber)}`}>{claimNumber}</Tag>,
    },
    { key: "part", head: "Part", cell: ({ partNumber, description }) => partNumber ?? description },
    {
      key: "unit",
      head: "Model and serial",
      wideOnly: true,
      cell: ({ model, serial }) => `${model}, ${serial ?? "no serial"}`,
    },
    { key: "job", head: "Completed", wideOnly: true, cell: ({ completedOn }) => formatPlainDay(completedOn) },
    {
      key: "until",
      head: "Keep until",
      cell: ({ keepUntil }) => `${formatPlainDay(keepUntil)}, ${formatDaysLeft(daysBetween(today, keepUntil))}`,
    },
  ];
}
