import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { Button } from "@/app/_ui/button";
import { DefinitionList } from "@/app/_ui/definition-list";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { Plate } from "@/app/_ui/plate";
import { readOnly } from "@/db/client";
import { loadBatch } from "@/db/queries/batches";
import { previewTakeBack, type TakeBackResult } from "@/db/writes/take-back";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { ProblemTable } from "../_components/problem-table";
import { takeLoadBack } from "./actions";

export const metadata: Metadata = { title: "Load" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly batch: string }>;
  readonly searchParams: Promise<{ readonly back?: string }>;
}

export default async function BatchPage({ params, searchParams }: Props) {
  const number = Number((await params).batch);
  const found = Number.isSafeInteger(number) && number > 0 ? await readOnly((db) => loadBatch(db, number)) : undefined;
  if (found === undefined) notFound();
  const { batch, held } = found;
  const preview = (await searchParams).back === undefined ? undefined : await previewTakeBack(number);
  const isIn = batch.state === "added";
  return (
    <Page
      above={<Link href="/files">Files in</Link>}
      title={`Load ${number}, ${batch.fileName}: ${isIn ? `${formatCount(batch.rowsNew)} added, ${formatCount(batch.rowsChanged)} changed` : "taken back"}`}
      margin={
        <p>
          Fingerprint of the file: <span className="figures">{batch.fileSha256.slice(0, 12)}</span>
        </p>
      }
    >
      <Plate>
        <DefinitionList
          items={[
            { term: "New", detail: formatCount(batch.rowsNew) },
            { term: "Changed", detail: formatCount(batch.rowsChanged) },
            { term: "Already here", detail: formatCount(batch.rowsSame) },
            { term: "Set aside", detail: formatCount(batch.rowsHeld) },
            { term: "Rows in the file", detail: formatCount(batch.rowsTotal) },
          ]}
        />
      </Plate>
      {isIn && preview === undefined && (
        <p>
          <Link href={`/files/${number}?back=1`}>Take back this load</Link>
        </p>
      )}
      {isIn && preview !== undefined && <Preview batch={number} preview={preview} />}
      {held.length > 0 && (
        <ProblemTable
          problems={held.flatMap(({ row, cells, problems }) =>
            problems.map((entry) => ({ ...entry, row, value: cells[entry.column] ?? "" })),
          )}
        />
      )}
    </Page>
  );
}

function Preview({ batch, preview }: { readonly batch: number; readonly preview: TakeBackResult }) {
  if (preview.kind !== "taken back") return <Notice status="note" title="This load has been taken back already" />;
  const lists = [
    { title: "Will be removed", rows: preview.removed },
    { title: "Will return to earlier values", rows: preview.returned },
    { title: "Will stay", rows: preview.staying },
  ];
  return (
    <Plate title="Taking this load back">
      {lists.map(({ title, rows }) => (
        <div key={title}>
          <h3>{title}</h3>
          {rows.length === 0 ? (
            <p>Nothing.</p>
          ) : (
            <ul>
              {rows.map((entry) => (
                <li key={`${entry.noun} ${entry.reason}`}>
                  {formatCounted(entry.rows, entry.noun)}
                  {entry.reason !== "" && `: ${entry.reason}`} ({entry.examples.join(", ")})
                </li>
              ))}
            </ul>
          )}
        </div>
      ))}
      <form action={takeLoadBack} className="cluster">
        <input type="hidden" name="batch" value={batch} />
        <Button>Take back load {String(batch)}</Button>
        <Link href={`/files/${batch}`}>Keep it</Link>
      </form>
    </Plate>
  );
}
