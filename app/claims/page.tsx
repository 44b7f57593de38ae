import type { Metadata } from "next";
import Link from "next/link";
import { DayRuler } from "@/app/_charts/day-ruler";
import { type ClaimableJob, loadClaimable } from "@/app/_claims/load-claimable";
import { todayIn } from "@/app/_clock/today";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import { readOnly } from "@/db/client";
import { type ClaimListRow, loadClaimList } from "@/db/queries/claim-list";
import { loadShop } from "@/db/queries/shop";
import type { Day } from "@/lib/calendar/day";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";

export const metadata: Metadata = { title: "Claims" };
export const dynamic = "force-dynamic";

export default async function ClaimsPage() {
  const { drafts, claimable, today } = await readOnly(
    async (db) => {
      const today = todayIn((await loadShop(db)).timeZone);
      return { today, drafts: await loadClaimList(db), claimable: await loadClaimable(db, today) };
    },
    { timeoutSeconds: 30 },
  );
  return (
    <Page title={findingOf(drafts, claimable)} margin={<Basis />} wide>
      <section className="stack">
        <h2>Being built</h2>
        {drafts.length === 0 ? (
          <EmptyState kind="nothing-due" title="No claim is being built">
            {claimable.length > 0 && <p>{formatCounted(claimable.length, "closed job")} below can still be claimed.</p>}
          </EmptyState>
        ) : (
          <Table
            caption="Draft claims by the day to file"
            columns={draftColumns(today)}
            rows={drafts}
            rowKey={(row) => row.claimNumber}
          />
        )}
      </section>
      <section className="stack">
        <h2>Not claimed yet</h2>
        {claimable.length === 0 ? (
          <EmptyState kind="nothing-due" title="No covered job is waiting to be claimed" />
        ) : (
          <Table
            caption="Closed jobs with covered work and no claim, still inside the filing window"
            columns={claimableColumns(today)}
            rows={claimable}
            rowKey={(row) => `${row.jobNumber} ${row.claim.source.policy}`}
          />
        )}
      </section>
    </Page>
  );
}

function draftColumns(today: Day): Column<ClaimListRow>[] {
  return [
    {
      key: "claim",
      head: "Claim",
      cell: (row) => <Tag href={`/claims/${encodeURIComponent(row.claimNumber)}`}>{row.claimNumber}</Tag>,
    },
    { key: "payer", head: "Payer", cell: (row) => row.payer },
    {
      key: "unit",
      head: "Unit",
      wideOnly: true,
      cell: (row) => <Tag href={`/units/${row.unitId}`}>{row.serial ?? "no serial"}</Tag>,
    },
    { key: "completed", head: "Job completed", wideOnly: true, cell: (row) => formatPlainDay(row.completedOn) },
    {
      key: "due",
      head: "File by",
      cell: (row) =>
        row.fileBy === undefined ? "–" : <DayRuler from={row.completedOn} due={row.fileBy} today={today} />,
    },
    {
      key: "amount",
      head: "Amount",
      kind: "number",
      cell: (row) => formatMoney({ cents: row.claimedCents, currency: row.currency }),
    },
  ];
}

function claimableColumns(today: Day): Column<ClaimableJob>[] {
  return [
    {
      key: "job",
      head: "Job",
      cell: (row) => (
        <Link href={`/claims/for/${encodeURIComponent(row.jobNumber)}`} className="nowrap">
          {row.jobNumber}
        </Link>
      ),
    },
    { key: "payer", head: "Payer", cell: (row) => row.claim.source.payerName },
    {
      key: "unit",
      head: "Unit",
      wideOnly: true,
      cell: (row) => <Tag href={`/units/${row.unitId}`}>{row.serial ?? "no serial"}</Tag>,
    },
    { key: "component", head: "Component", wideOnly: true, cell: (row) => row.component?.replaceAll("_", " ") ?? "–" },
    {
      key: "due",
      head: "File by",
      cell: (row) => <DayRuler from={row.completedOn} due={row.claim.filing.lastDay} today={today} />,
    },
    {
      key: "evidence",
      head: "In place",
      wideOnly: true,
      cell: (row) =>
        `${row.claim.tasks.filter((task) => task.state !== "missing").length} of ${row.claim.tasks.length}`,
    },
    {
      key: "amount",
      head: "Amount",
      kind: "number",
      cell: (row) => formatMoney({ cents: row.claim.totalCents, currency: row.claim.currency }),
    },
  ];
}

function findingOf(drafts: readonly ClaimListRow[], claimable: readonly ClaimableJob[]): string {
  const [first] = claimable;
  if (first === undefined)
    return drafts.length === 0
      ? "Nothing is waiting to be claimed"
      : `${formatCounted(drafts.length, "claim")} being built`;
  const cents = claimable.reduce((sum, row) => sum + row.claim.totalCents, 0);
  return `${formatMoney({ cents, currency: first.claim.currency })} of covered work is not claimed yet, in ${formatCounted(claimable.length, "job")}`;
}

function Basis() {
  return (
    <>
      <p>
        Closed jobs whose component failed, inside the longest filing window on file, decided by the payer’s terms on
        file as of today.
      </p>
      <p>
        Amounts follow the payer’s schedule and the invoices on the job. A claim is listed although something may still
        be missing: open it to see what.
      </p>
      <p>The policy’s wording and local law decide.</p>
    </>
  );
}
