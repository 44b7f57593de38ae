import Link from "next/link";
import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import type { DisputedLine } from "@/db/queries/money-disputes";
import { type Day, daysBetween } from "@/lib/calendar/day";
import { refusalReasons } from "@/lib/claims/life/refusal-reason";
import { formatCounted } from "@/lib/format/format-count";
import { formatDaysLeft, formatPlainDay } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";

/** One row a line, with what the payer said of it and the way to its appeal. */
export function DisputeTable({ lines, today }: { readonly lines: readonly DisputedLine[]; readonly today: Day }) {
  return (
    <Table
      caption="Lines of which a payer kept something, the nearest last day first"
      columns={columns(today)}
      rows={lines}
      rowKey={({ claimNumber, line }) => `${claimNumber} ${line}`}
    />
  );
}

function columns(today: Day): Column<DisputedLine>[] {
  return [
    {
      key: "claim",
      head: "Claim",
      cell: ({ claimNumber }) => <Tag href={`/claims/${encodeURIComponent(claimNumber)}`}>{claimNumber}</Tag>,
    },
    { key: "line", head: "Line", wideOnly: true, cell: ({ line, description }) => `${line}, ${description}` },
    {
      key: "asked",
      head: "Asked",
      kind: "number",
      wideOnly: true,
      cell: ({ askedCents: cents, currency }) => formatMoney({ cents, currency }),
    },
    {
      key: "kept",
      head: "Kept by the payer",
      kind: "number",
      cell: ({ askedCents, grantedCents, currency }) => formatMoney({ cents: askedCents - grantedCents, currency }),
    },
    { key: "words", head: "Payer’s words", wideOnly: true, cell: (line) => <Words line={line} /> },
    { key: "due", head: "Last day", wideOnly: true, cell: ({ dueOn }) => dayInWords(dueOn, today) },
    {
      key: "do",
      head: "Do",
      cell: ({ claimNumber }) => <Link href={`/claims/${encodeURIComponent(claimNumber)}/do/appealed`}>Appeal</Link>,
    },
  ];
}

function Words({ line: { payer, payerText, reason } }: { readonly line: DisputedLine }) {
  return (
    <>
      {payer}: {payerText === "" ? "no words" : `“${payerText}”`}
      <br />
      <span className="small">{reason === undefined ? "no reason of ours yet" : refusalReasons[reason]}</span>
    </>
  );
}

function dayInWords(dueOn: Day | undefined, today: Day): string {
  if (dueOn === undefined) return "no clock";
  const left = daysBetween(today, dueOn);
  if (left < 0) return `${formatPlainDay(dueOn)}, ${formatCounted(-left, "day")} ago`;
  return `${formatPlainDay(dueOn)}, ${formatDaysLeft(left)}`;
}
