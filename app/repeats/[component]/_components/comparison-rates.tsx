import { DotIntervalRows } from "@/app/_charts/dot-interval-rows";
import { Figure } from "@/app/_ui/figure";
import { type Column, Table } from "@/app/_ui/table";
import type { GroupComparison } from "@/lib/failures/compare-groups";
import { rateRows } from "@/lib/figures/rate-rows";
import { formatCount } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";
import { formatProbability } from "@/lib/format/format-probability";
import { elsewhereWords } from "../../comparison-words";
import { methodName } from "../../method-name";
import { type RatioRow, rateGroups, ratioRows } from "../comparison-rows";

interface Props {
  readonly comparison: GroupComparison;
  readonly csvHref: string;
}

/** Rate over rate, three ways, with the line at which the groups would be alike. */
export function ComparisonRates({ comparison, csvHref }: Props) {
  const ratios = ratioRows(comparison);
  const rates = rateRows(rateGroups(comparison), { order: "given", counted: "failures" });
  const figure = rateRows(
    ratios.flatMap(({ key, label, outcome }) =>
      outcome.kind === "estimate" ? [{ key, label, estimate: outcome.estimate }] : [],
    ),
    { order: "given", counted: "failures", against: "as often" },
  );
  const elsewhere = elsewhereWords(comparison);
  return (
    <Figure
      takeaway={`How many times as often: ${comparison.first.name} over ${comparison.second.name}`}
      csvHref={csvHref}
      note={
        <>
          <p>
            At like ages: one exact ratio over all age bands, with the doubt of both groups. Seen over expected: the
            second group’s rates, age by age, foretell the first’s failures and are taken as known, so its range is too
            short where the second group is small. All ages in one: whatever the ages.
          </p>
          {elsewhere !== undefined && <p>{elsewhere}</p>}
        </>
      }
      table={<Table caption="Ratios" columns={ratioColumns} rows={ratios} rowKey={({ key }) => key} narrow="scroll" />}
    >
      {rates.kind === "rows" && <DotIntervalRows label="Failures per 100 units a year" figure={rates} />}
      {figure.kind === "rows" && <DotIntervalRows label="Ratio of the rates" figure={figure} even={1} />}
      {ratios.map(
        ({ key, label, outcome }) =>
          outcome.kind === "none" && (
            <p key={key}>
              {label}: {outcome.why}.
            </p>
          ),
      )}
    </Figure>
  );
}

const figureOf = (of: (estimate: Estimate) => number, decimals: number) => (row: RatioRow) =>
  row.outcome.kind === "estimate" ? formatDecimal(of(row.outcome.estimate), decimals) : "–";

type Estimate = Extract<RatioRow["outcome"], { kind: "estimate" }>["estimate"];

const ratioColumns: readonly Column<RatioRow>[] = [
  { key: "label", head: "Compared", cell: ({ label }) => label },
  { key: "ratio", head: "Times as often", kind: "number", cell: figureOf(({ point }) => point, 2) },
  { key: "low", head: "From", kind: "number", cell: figureOf(({ lo }) => lo, 2) },
  { key: "high", head: "To", kind: "number", cell: figureOf(({ hi }) => hi, 2) },
  {
    key: "events",
    head: "Failures",
    kind: "number",
    cell: ({ outcome }) => (outcome.kind === "estimate" ? formatCount(outcome.estimate.events) : "–"),
  },
  { key: "expected", head: "Expected", kind: "number", cell: figureOf(({ n }) => n, 1) },
  {
    key: "probability",
    head: "By luck",
    kind: "number",
    cell: ({ probability }) => (probability === undefined ? "–" : formatProbability(probability)),
  },
  {
    key: "method",
    head: "Method",
    cell: ({ outcome }) => (outcome.kind === "estimate" ? methodName(outcome.estimate.method) : outcome.why),
  },
];
