import Link from "next/link";
import { ButtonLink } from "@/app/_ui/button-link";
import { EmptyState } from "@/app/_ui/empty-state";
import { type Column, Table } from "@/app/_ui/table";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";
import { changeWords } from "../altered-words";
import type { AlteredDecision, PolicyImpact } from "../load-policy-impact";

const shownRows = 100;

/** Which open decisions a version would alter, the largest amounts on top; the file holds all of them. */
export function AlteredTable({ impact, csvHref }: { readonly impact: PolicyImpact; readonly csvHref: string }) {
  const { altered } = impact;
  if (altered.length === 0) {
    return (
      <EmptyState kind="nothing-due" title="No open decision changes">
        <p>It will decide units sold on its days from now on.</p>
      </EmptyState>
    );
  }
  return (
    <>
      <Table
        caption={
          altered.length > shownRows
            ? `The ${shownRows} largest of ${formatCounted(altered.length, "decision")}`
            : "Decisions that would change"
        }
        columns={columns}
        rows={altered.slice(0, shownRows)}
        rowKey={({ jobNumber }) => jobNumber}
      />
      <ButtonLink href={csvHref}>All of them as CSV</ButtonLink>
    </>
  );
}

const columns: readonly Column<AlteredDecision>[] = [
  {
    key: "job",
    head: "Job",
    cell: ({ jobNumber, claimNumber }) => (
      <>
        <Link href={`/jobs/${encodeURIComponent(jobNumber)}`}>{jobNumber}</Link>
        {claimNumber !== undefined && `, draft ${claimNumber}`}
      </>
    ),
  },
  { key: "completed", head: "Completed", wideOnly: true, cell: ({ completedOn }) => formatPlainDay(completedOn) },
  {
    key: "change",
    head: "What changes",
    cell: (row) => changeWords(row).map((line) => <p key={line}>{line}</p>),
  },
  {
    key: "before",
    head: "Could ask",
    kind: "number",
    cell: ({ beforeCents, currency }) => formatMoney({ cents: beforeCents, currency }),
  },
  {
    key: "after",
    head: "Then",
    kind: "number",
    cell: ({ afterCents, currency }) => formatMoney({ cents: afterCents, currency }),
  },
];
