import type { Metadata } from "next";
import Link from "next/link";
import { mayOpen } from "@/app/_people/may-open";
import { Page } from "@/app/_ui/page";
import { type Column, Table } from "@/app/_ui/table";
import { fileKindNames, fileKinds } from "@/lib/intake/file-kinds";
import { type DocumentedColumn, documentedColumns } from "@/lib/intake/json-schemas";

export const metadata: Metadata = { title: "Columns" };

export default async function ColumnsPage() {
  await mayOpen("/files/columns");
  return (
    <Page
      above={<Link href="/files">Files in</Link>}
      title="Columns of the files that can be loaded"
      margin={<Basis />}
      wide
    >
      {fileKinds.map((kind) => (
        <section key={kind} id={kind} className="stack">
          <h2>{fileKindNames[kind]}</h2>
          <p>
            <a href={`/files/columns/${kind}.json`}>JSON Schema</a>
          </p>
          {kind !== "policies" && (
            <Table
              caption={`Columns of ${fileKindNames[kind].toLowerCase()}`}
              captionHidden
              columns={columns}
              rows={documentedColumns(kind)}
              rowKey={(row) => row.name}
            />
          )}
        </section>
      ))}
    </Page>
  );
}

const columns: readonly Column<DocumentedColumn>[] = [
  { key: "name", head: "Column", cell: (row) => <code>{row.name}</code> },
  { key: "needed", head: "Needed", cell: (row) => (row.needed ? "always" : "may be blank") },
  { key: "meaning", head: "Meaning", cell: (row) => row.description },
  {
    key: "example",
    head: "Example",
    wideOnly: true,
    cell: (row) => (row.words.length > 0 && row.words.length <= 12 ? row.words.join(", ") : row.example),
  },
];

function Basis() {
  return (
    <>
      <p>
        CSV (RFC 4180), UTF-8, commas, one header row with these names in any order. A blank cell means unknown. Days
        are written 2025-03-31, money 129.50.
      </p>
      <p>Load in this order: the company, units, jobs, part lines, readings; then ranges, policies and photos.</p>
    </>
  );
}
