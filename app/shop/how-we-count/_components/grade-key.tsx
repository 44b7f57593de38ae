import { IntervalAxis, IntervalMark } from "@/app/_charts/interval-mark";
import { EstimateText } from "@/app/_ui/estimate-text";
import { Table } from "@/app/_ui/table";
import { rateAxis } from "@/lib/figures/rate-axis";
import { rateEstimate } from "@/lib/statistics/rate-estimate";

/** What each grade looks like, drawn from worked counts by the same parts that draw the pages. */
export function GradeKey() {
  return (
    <Table
      caption="How the grades look"
      captionHidden
      columns={[
        { key: "grade", head: "Grade", cell: (row) => row.name },
        {
          key: "mark",
          head: "Mark",
          kind: "mark",
          headNote: <IntervalAxis axis={axis} />,
          cell: (row) => <IntervalMark estimate={row.estimate} axis={axis} besideText />,
        },
        { key: "words", head: "In words", cell: (row) => <EstimateText estimate={row.estimate} frame={axis.frame} /> },
      ]}
      rows={examples}
      rowKey={(row) => row.name}
    />
  );
}

const example = (name: string, events: number, unitYears: number) => ({
  name,
  estimate: rateEstimate({ events, unitYears, level: 0.95, method: "poisson-exact" }),
});

const examples = [
  example("Firm", 31, 412),
  example("Loose", 3, 60),
  example("Loose, none seen", 0, 48),
  example("Thin", 1, 6),
];
const axis = rateAxis(examples.map(({ estimate }) => estimate));
