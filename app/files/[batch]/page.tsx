import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { mayOpen } from "@/app/_people/may-open";
import { ButtonLink } from "@/app/_ui/button-link";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { type BatchRow, loadBatch } from "@/db/queries/batches";
import { loadCallbacksOfBatch } from "@/db/queries/callbacks";
import { loadNotesOfBatch } from "@/db/queries/cell-notes";
import { previewTakeBack } from "@/db/writes/take-back";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { isFileKind } from "@/lib/intake/file-kinds";
import { RowSum } from "../_components/row-sum";
import { Steps } from "../_components/steps";
import { Callbacks } from "./callbacks";
import { CellNotes } from "./cell-notes";
import { NoRecord } from "./no-record";
import { TakingBack } from "./taking-back";

export const metadata: Metadata = { title: "Load" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly batch: string }>;
  readonly searchParams: Promise<{ readonly back?: string | readonly string[] }>;
}

const mostNotes = 200;

export default async function BatchPage({ params, searchParams }: Props) {
  await mayOpen("/files/[batch]");
  const number = Number((await params).batch);
  if (!Number.isSafeInteger(number) || number <= 0) notFound();
  const { found, notes, callbacks } = await readOnly(async (db) => ({
    found: await loadBatch(db, number),
    callbacks: await loadCallbacksOfBatch(db, number, mostNotes),
    notes: await loadNotesOfBatch(db, number, mostNotes),
  }));
  if (found === undefined) notFound();
  const { batch, held, waiting } = found;
  const isIn = batch.state === "added";
  const preview = isIn && (await searchParams).back !== undefined ? await previewTakeBack(number) : undefined;
  return (
    <Page
      above={<Link href="/files">Files in</Link>}
      title={findingOf(batch)}
      margin={<Basis batch={batch} />}
      actions={
        isIn && waiting.held > 0 ? (
          <ButtonLink href={`/files/${number}/held`} weight="main">
            {`Correct ${formatCounted(waiting.held, "row")} held back`}
          </ButtonLink>
        ) : undefined
      }
    >
      <Steps at={preview === undefined ? "add" : "back"} hrefs={isIn ? { back: `/files/${number}?back=1` } : {}} />
      <RowSum counts={batch} kind={isFileKind(batch.kind) ? batch.kind : "jobs"} />
      {waiting.mended + waiting.left_out > 0 && (
        <p>
          Of the rows held back, {formatCount(waiting.mended)} were corrected and taken in later,{" "}
          <Link href={`/files/${number}/held`}>{formatCount(waiting.left_out)} were left out</Link>, and{" "}
          {formatCount(waiting.held)} wait.
        </p>
      )}
      {isIn && preview === undefined && (
        <p>
          <Link href={`/files/${number}?back=1`}>Take back this load</Link>
        </p>
      )}
      {preview !== undefined && <TakingBack batch={number} preview={preview} />}
      <Callbacks rows={callbacks.rows} total={callbacks.total} />
      <NoRecord rows={held.filter(({ state }) => state === "refused")} total={waiting.refused} />
      <CellNotes notes={notes} most={mostNotes} />
    </Page>
  );
}

function findingOf({ batchId, fileName, state, rowsNew, rowsChanged }: BatchRow): string {
  const fate = state === "added" ? `${formatCount(rowsNew)} added, ${formatCount(rowsChanged)} changed` : "taken back";
  return `Load ${batchId}, ${fileName}: ${fate}`;
}

function Basis({ batch: { addedAt, fileSha256, matching, parentBatch } }: { readonly batch: BatchRow }) {
  return (
    <>
      <p>Added {addedAt.slice(0, 16).replace("T", " ")} (UTC).</p>
      <p>
        Fingerprint of the file: <span className="figures">{fileSha256.slice(0, 12)}</span>
      </p>
      {matching !== null && (
        <p>
          {formatCount(matching.columns.filter(({ target }) => target !== undefined).length)} of{" "}
          {formatCounted(matching.columns.length, "column")} matched; days {matching.dateOrder}.
        </p>
      )}
      {parentBatch !== null && (
        <p>
          These rows were held back with <Link href={`/files/${parentBatch}`}>load {parentBatch}</Link> and corrected.
        </p>
      )}
    </>
  );
}
