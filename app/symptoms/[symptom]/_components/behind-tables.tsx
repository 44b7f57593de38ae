import Link from "next/link";
import { EstimateText } from "@/app/_ui/estimate-text";
import { type Column, Table } from "@/app/_ui/table";
import type { BehindSymptom } from "@/lib/sheets/symptom-shares";

/** Failures of parts, causes outside them and what was not found, each in a table of its own, all of one whole. */
export function BehindTables({ behind }: { readonly behind: readonly BehindSymptom[] }) {
  const kinds = [
    ["component", "The part itself failed"],
    ["outside", "The cause lay outside the part"],
    ["none", "Nothing found, or not determined"],
  ] as const;
  return kinds.map(([kind, caption]) => {
    const rows = behind.filter((each) => each.kind === kind);
    if (rows.length === 0) return null;
    return <Table key={kind} caption={caption} columns={columns} rows={rows} rowKey={({ of }) => of} />;
  });
}

const columns: readonly Column<BehindSymptom>[] = [
  {
    key: "name",
    head: "Behind it",
    cell: ({ of, name, kind }) =>
      kind === "component" ? <Link href={`/repeats/${of.split(":")[1]}`}>{name}</Link> : name,
  },
  {
    key: "share",
    head: "Share of the closed jobs",
    cell: ({ share }) => <EstimateText estimate={share} counted="jobs" />,
  },
];
