import Link from "next/link";
import { type Column, Table } from "@/app/_ui/table";
import type { KeptNote } from "@/db/queries/cell-notes";
import { fieldInWords } from "../field-in-words";

/** Cells of the job's rows that were not taken as they stood: what stood there, what was made of it, and why. */
export function CellNotes({ notes }: { readonly notes: readonly KeptNote[] }) {
  return (
    <section className="stack-tight" id="cells">
      <h2>Cells that were not taken as they stood</h2>
      {notes.length === 0 ? (
        <p>Every cell of its rows was taken as it stood, or in the notation that was settled for the whole file.</p>
      ) : (
        <Table
          caption="Raw cells, what was made of them, and why"
          captionHidden
          columns={columns}
          rows={notes}
          rowKey={({ batchId, row, source, column, note }) => `${batchId} ${row} ${source} ${column} ${note}`}
        />
      )}
    </section>
  );
}

const columns: readonly Column<KeptNote>[] = [
  { key: "source", head: "Column", cell: ({ source }) => source },
  { key: "raw", head: "Stands there", cell: ({ raw }) => (raw === "" ? "blank" : raw.slice(0, 200)) },
  {
    key: "taken",
    head: "Taken as",
    cell: ({ column, taken }) => `${fieldInWords(column)}: ${taken === "" ? "blank" : taken.slice(0, 200)}`,
  },
  { key: "note", head: "Why", cell: ({ note }) => note },
  {
    key: "place",
    head: "File and row",
    cell: ({ batchId, fileName, row }) => (
      <>
        <Link href={`/files/${batchId}`}>{fileName}</Link>, row {row}
      </>
    ),
  },
];
