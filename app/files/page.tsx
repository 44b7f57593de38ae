import type { Metadata } from "next";
import Link from "next/link";
import { mayOpen } from "@/app/_people/may-open";
import { ButtonLink } from "@/app/_ui/button-link";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { type Column, Table } from "@/app/_ui/table";
import { readOnly } from "@/db/client";
import { type BatchRow, loadBatches } from "@/db/queries/batches";
import { countHeldRows } from "@/db/queries/held-row";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { type FileKind, fileKindNames } from "@/lib/intake/file-kinds";
import { DraftTable } from "./_components/draft-table";
import { openDrafts } from "./_draft/open-draft";

export const metadata: Metadata = { title: "Files in" };
export const dynamic = "force-dynamic";

export default async function FilesPage() {
  await mayOpen("/files");
  const drafts = await openDrafts();
  const { batches, held } = await readOnly(async (db) => ({
    batches: await loadBatches(db),
    held: await countHeldRows(db),
  }));
  return (
    <Page
      title={
        batches.length === 0
          ? "No file has been loaded"
          : `${formatCounted(batches.length, "load")}, ${formatCounted(held, "row")} held back`
      }
      margin={<p>A load is in whole or not at all. Rows held back are kept with their reasons and are in no number.</p>}
      actions={
        <>
          <ButtonLink href="/files/new" weight="main">
            Load a file
          </ButtonLink>
          <ButtonLink href="/files/sending">Sending jobs</ButtonLink>
        </>
      }
      wide
    >
      {drafts.length > 0 && <DraftTable drafts={drafts} />}
      {batches.length === 0 ? (
        <EmptyState kind="never-used" title="Begin with the units in service and the closed jobs">
          <p>
            <Link href="/files/columns">Which columns?</Link>
          </p>
        </EmptyState>
      ) : (
        <Table
          caption="Loads, the latest first"
          columns={columns}
          rows={batches}
          rowKey={(batch) => String(batch.batchId)}
        />
      )}
    </Page>
  );
}

const columns: readonly Column<BatchRow>[] = [
  {
    key: "load",
    head: "Load",
    cell: (batch) => <Link href={`/files/${batch.batchId}`}>{`${batch.batchId}: ${batch.fileName}`}</Link>,
  },
  { key: "kind", head: "Holds", wideOnly: true, cell: (batch) => fileKindNames[batch.kind as FileKind] ?? batch.kind },
  { key: "at", head: "Added", wideOnly: true, cell: (batch) => batch.addedAt.slice(0, 16).replace("T", " ") },
  { key: "new", head: "New", kind: "number", cell: (batch) => formatCount(batch.rowsNew) },
  { key: "changed", head: "Changed", kind: "number", wideOnly: true, cell: (batch) => formatCount(batch.rowsChanged) },
  { key: "same", head: "Already here", kind: "number", wideOnly: true, cell: (batch) => formatCount(batch.rowsSame) },
  { key: "held", head: "Held back", kind: "number", cell: (batch) => formatCount(batch.rowsHeld) },
  { key: "state", head: "State", cell: (batch) => (batch.state === "added" ? "in" : "taken back") },
];
