import type { Metadata } from "next";
import Link from "next/link";
import { EmptyState } from "@/app/_ui/empty-state";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { loadFile } from "@/db/writes/load-file";
import type { LoadReport, LoadResult } from "@/db/writes/load-result";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { fileKindNames } from "@/lib/intake/file-kinds";
import { ProblemTable } from "../../_components/problem-table";
import { findUpload } from "../../uploads";
import { AddForm } from "./add-form";

export const metadata: Metadata = { title: "Check rows" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly id: string }>;
}

export default async function CheckPage({ params }: Props) {
  const { id } = await params;
  const upload = await findUpload(id);
  if (upload === undefined) return <Gone />;
  const result = await loadFile({ path: upload.path, fileName: upload.fileName, mode: "dry run" });
  return (
    <Page
      above={<Link href="/files/new">Load another file</Link>}
      title={findingOf(upload.fileName, result)}
      margin={<p>Nothing has been added yet. Row numbers are those that a spreadsheet shows: the header is row 1.</p>}
    >
      <Result id={id} result={result} />
    </Page>
  );
}

function Result({ id, result }: { readonly id: string; readonly result: LoadResult }) {
  switch (result.kind) {
    case "unreadable":
      return (
        <Notice status="act-now" title="This file can’t be loaded">
          {result.problems.map(({ row, problem, fix }) => (
            <p key={`${row} ${problem}`}>
              {row !== undefined && `Row ${row}: `}
              {problem} {fix}
            </p>
          ))}
        </Notice>
      );
    case "loaded before":
      return (
        <Notice
          status="note"
          title={`You loaded this file on ${result.addedAt.slice(0, 10)}; all ${formatCount(result.rows)} rows are here`}
        >
          <p>
            <Link href={`/files/${result.batchId}`}>See load {result.batchId}</Link>
          </p>
        </Notice>
      );
    default:
      return <Checked id={id} report={result.report} />;
  }
}

function Checked({ id, report }: { readonly id: string; readonly report: LoadReport }) {
  const good = report.rowsNew + report.rowsChanged;
  return (
    <>
      <p>
        New {formatCount(report.rowsNew)} · Changed {formatCount(report.rowsChanged)} · Already here{" "}
        {formatCount(report.rowsSame)} · With problems {formatCount(report.rowsHeld)} ={" "}
        {formatCounted(report.rowsTotal, "row")} of {fileKindNames[report.fileKind].toLowerCase()}
      </p>
      {report.rowsHeld === 0 && good > 0 && (
        <AddForm
          upload={id}
          mode="add"
          words={`Add ${formatCounted(report.rowsNew, "row")}, change ${formatCount(report.rowsChanged)}`}
        />
      )}
      {report.rowsHeld === 0 && good === 0 && (
        <EmptyState kind="nothing-due" title="Every row is here already; there is nothing to add" />
      )}
      {report.rowsHeld > 0 && (
        <>
          {good > 0 && (
            <AddForm
              upload={id}
              mode="add and set aside"
              words={`Add the ${formatCounted(good, "good row")}, set ${formatCount(report.rowsHeld)} aside`}
            />
          )}
          <ProblemTable problems={report.problems} />
          <p>
            <a href={`/files/check/${id}/report.csv`} download>
              Report as CSV
            </a>
            , or correct the file and <Link href="/files/new">choose it again</Link>.
          </p>
        </>
      )}
    </>
  );
}

function Gone() {
  return (
    <Page
      above={<Link href="/files">Files in</Link>}
      title="This file is no longer waiting"
      margin={<p>A file waits here until it is added or another is chosen.</p>}
    >
      <EmptyState kind="never-used" title="It was added, or never sent">
        <p>
          <Link href="/files/new">Choose it again</Link>: a file that was added already is recognised and not added
          twice.
        </p>
      </EmptyState>
    </Page>
  );
}

function findingOf(fileName: string, result: LoadResult): string {
  switch (result.kind) {
    case "unreadable":
      return `${fileName} can’t be loaded`;
    case "loaded before":
      return `${fileName} was loaded before`;
    default:
      return result.report.rowsHeld === 0
        ? `${fileName}: every row is good`
        : `${fileName}: ${formatCounted(result.report.rowsHeld, "row has", "rows have")} a problem`;
  }
}
