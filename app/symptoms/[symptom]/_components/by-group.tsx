import { EstimateText } from "@/app/_ui/estimate-text";
import { type Column, Table } from "@/app/_ui/table";
import { type BehindSymptom, behindSymptom, type SymptomGroup } from "@/lib/sheets/symptom-shares";

interface Props {
  readonly caption: string;
  readonly name: (group: SymptomGroup) => string;
  readonly groups: readonly SymptomGroup[];
}

interface Row {
  readonly name: string;
  readonly jobs: number;
  readonly behind: readonly BehindSymptom[];
}

/** What was commonest in each group, with its range within the group; groups in a fixed order, never by their share. */
export function ByGroup({ caption, name, groups }: Props) {
  const names = [...new Set(groups.map(name))].sort();
  const rows = names.map((each): Row => {
    const own = groups.filter((group) => name(group) === each);
    return { name: each, jobs: own.reduce((sum, { jobs }) => sum + jobs, 0), behind: behindSymptom(own) };
  });
  return <Table caption={caption} columns={columns} rows={rows} rowKey={(row) => row.name} />;
}

const columns: readonly Column<Row>[] = [
  { key: "name", head: "Group", cell: ({ name }) => name },
  { key: "jobs", head: "Closed jobs", kind: "number", wideOnly: true, cell: ({ jobs }) => jobs },
  { key: "first", head: "Commonest", cell: ({ behind: [first] }) => first?.name ?? "–" },
  {
    key: "share",
    head: "Its share",
    cell: ({ behind: [first] }) => (first === undefined ? "–" : <EstimateText estimate={first.share} counted="jobs" />),
  },
];
