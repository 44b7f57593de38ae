import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { mayOpenJob } from "@/app/_people/may-open";
import { ButtonLink } from "@/app/_ui/button-link";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { type Column, Table } from "@/app/_ui/table";
import { readOnly } from "@/db/client";
import { loadNotesOfJob } from "@/db/queries/cell-notes";
import { loadJobFields } from "@/db/queries/job-fields";
import { type FieldHistory, type JobHistory, loadJobHistory } from "@/db/queries/job-history";
import type { Currency } from "@/lib/domain/money";
import { formatCounted } from "@/lib/format/format-count";
import { fieldInWords, valueInWords } from "../field-in-words";
import { CellNotes } from "./cell-notes";
import { Conflicts } from "./conflicts";

export const metadata: Metadata = { title: "History of a job" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly number: string }>;
}

/** How a job came to be as it is: what files and people changed, where they disagree, and cells that were not taken as they stood. */
export default async function JobHistoryPage({ params }: Props) {
  await mayOpenJob("/jobs/[number]/history", decodeURIComponent((await params).number));
  const number = decodeURIComponent((await params).number);
  const path = `/jobs/${encodeURIComponent(number)}`;
  const { job, history, notes } = await readOnly(async (db) => ({
    job: await loadJobFields(db, number),
    history: await loadJobHistory(db, number),
    notes: await loadNotesOfJob(db, number),
  }));
  if (job === undefined) notFound();
  const { currency } = job;
  return (
    <Page
      above={<Link href={path}>Job {number}</Link>}
      title={findingOf(number, history)}
      margin={<Basis madeBy={history.madeBy} />}
      actions={<ButtonLink href={`${path}/edit`}>Set a field</ButtonLink>}
      wide
    >
      <Conflicts jobNumber={number} differences={history.differences} currency={currency} />
      {history.fields.length === 0 ? (
        <EmptyState kind="nothing-due" title="Nothing was changed since it came in" />
      ) : (
        <Table
          caption="What was changed, the latest first"
          columns={columnsFor(currency)}
          rows={history.fields}
          rowKey={({ column, at, by }) => `${column} ${at} ${by.kind}`}
        />
      )}
      <CellNotes notes={notes} />
    </Page>
  );
}

function findingOf(number: string, { fields, differences }: JobHistory): string {
  const changes =
    fields.length === 0
      ? "as it came in"
      : formatCounted(fields.length, "change since it came in", "changes since it came in");
  const open =
    differences.length === 0
      ? ""
      : `; ${formatCounted(differences.length, "field where a file says", "fields where files say")} otherwise`;
  return `Job ${number}: ${changes}${open}`;
}

function columnsFor(currency: Currency): readonly Column<FieldHistory>[] {
  return [
    { key: "field", head: "Field", cell: ({ column }) => fieldInWords(column) },
    { key: "before", head: "Was", cell: ({ column, before }) => valueInWords(column, before, currency) },
    { key: "after", head: "Became", cell: ({ column, after }) => valueInWords(column, after, currency) },
    { key: "by", head: "By", cell: ({ by }) => <Source by={by} /> },
    { key: "at", head: "On", wideOnly: true, cell: ({ at }) => at.slice(0, 10) },
    { key: "reason", head: "Why", cell: ({ by }) => (by.kind === "person" ? by.reason : "The file says so.") },
  ];
}

function Source({ by }: { readonly by: FieldHistory["by"] }) {
  if (by.kind === "person") return <>{by.name}, by hand</>;
  return (
    <>
      <Link href={`/files/${by.batchId}`}>Load {by.batchId}</Link>, {by.fileName}
    </>
  );
}

function Basis({ madeBy }: { readonly madeBy: JobHistory["madeBy"] }) {
  return (
    <>
      {madeBy !== undefined && (
        <p>
          Came with <Link href={`/files/${madeBy.batchId}`}>load {madeBy.batchId}</Link>, {madeBy.fileName}, on{" "}
          {madeBy.at.slice(0, 10)}.
        </p>
      )}
      <p>A field that was set here stands against files until somebody takes what a file says.</p>
      <p>Raw cells stay as they stood in the file, whatever was made of them.</p>
    </>
  );
}
