import { EstimateText } from "@/app/_ui/estimate-text";
import { type Column, Table } from "@/app/_ui/table";
import { type BehindSymptom, behindSymptom, type SymptomGroup, symptomLevel } from "@/lib/sheets/symptom-shares";
import type { Estimate } from "@/lib/statistics/estimate";
import { shareEstimate } from "@/lib/statistics/share-estimate";

interface Props {
  readonly caption: string;
  readonly name: (group: SymptomGroup) => string;
  /** Names in the order in which they stand; by letter where absent. */
  readonly order?: readonly string[];
  readonly groups: readonly SymptomGroup[];
}

interface Row {
  readonly name: string;
  readonly jobs: number;
  readonly behind: readonly BehindSymptom[];
  readonly firstVisit: Estimate;
}

/** What was commonest in each group, with its range within the group; groups in a fixed order, never by their share. */
export function ByGroup({ caption, name, order, groups }: Props) {
  const found = new Set(groups.map(name));
  const names = order === undefined ? [...found].sort() : order.filter((each) => found.has(each));
  const rows = names.map((each): Row => {
    const own = groups.filter((group) => name(group) === each);
    const jobs = own.reduce((sum, group) => sum + group.jobs, 0);
    const events = own.reduce((sum, group) => sum + group.firstVisit, 0);
    const firstVisit = shareEstimate({ events, trials: jobs, level: symptomLevel, method: "wilson" });
    return { name: each, jobs, behind: behindSymptom(own), firstVisit };
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
  {
    key: "visit",
    head: "Closed on the first visit",
    wideOnly: true,
    cell: ({ firstVisit }) => <EstimateText estimate={firstVisit} counted="jobs" />,
  },
];
