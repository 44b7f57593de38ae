import Link from "next/link";
import { EstimateText } from "@/app/_ui/estimate-text";
import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import { normalised } from "@/lib/domain/normalised";
import type { NeededPart } from "@/lib/sheets/symptom-parts";

const shown = 30;

export function PartsNeeded({ parts }: { readonly parts: readonly NeededPart[] }) {
  if (parts.length === 0) return <p>No part was fitted on these jobs.</p>;
  return (
    <Table
      caption={
        parts.length > shown ? `The ${shown} parts that most of these jobs needed` : "Parts that these jobs needed"
      }
      columns={columns}
      rows={parts.slice(0, shown)}
      rowKey={({ partNumber }) => partNumber}
    />
  );
}

const columns: readonly Column<NeededPart>[] = [
  {
    key: "part",
    head: "Part",
    cell: ({ partNumber }) => (
      <Link href={`/parts/${encodeURIComponent(normalised(partNumber))}`}>
        <Tag>{partNumber}</Tag>
      </Link>
    ),
  },
  { key: "name", head: "Name", cell: ({ description }) => description || "no name given" },
  { key: "share", head: "Jobs that needed it", cell: ({ share }) => <EstimateText estimate={share} counted="jobs" /> },
  { key: "pieces", head: "Pieces", kind: "number", wideOnly: true, cell: ({ pieces }) => pieces },
];
