import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import type { SymptomPart } from "@/db/queries/symptom-groups";

export function PartsNeeded({ parts }: { readonly parts: readonly SymptomPart[] }) {
  if (parts.length === 0) return <p>No part was fitted on these jobs.</p>;
  return (
    <Table
      caption="Parts that were needed, on all models of this kind"
      columns={columns}
      rows={parts}
      rowKey={({ partNumber }) => partNumber}
    />
  );
}

const columns: readonly Column<SymptomPart>[] = [
  { key: "part", head: "Part", cell: ({ partNumber }) => <Tag>{partNumber}</Tag> },
  { key: "name", head: "Name", cell: ({ description }) => description || "no name given" },
  { key: "jobs", head: "Jobs", kind: "number", cell: ({ jobs }) => jobs },
  { key: "pieces", head: "Pieces", kind: "number", wideOnly: true, cell: ({ pieces }) => pieces },
];
