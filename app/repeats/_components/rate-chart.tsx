import { DotIntervalRows } from "@/app/_charts/dot-interval-rows";
import { Figure } from "@/app/_ui/figure";
import { type Column, Table } from "@/app/_ui/table";
import type { FailureRates, GroupRate } from "@/lib/failures/failure-rates";
import { keyText } from "@/lib/failures/groups";
import { rateRows } from "@/lib/figures/rate-rows";
import { formatCounted } from "@/lib/format/format-count";
import { lifeAddress } from "../rate-address";
import { type RateCells, rateCells } from "../rate-cells";
import { countedNoun, dimensionNames } from "../rate-wording";
import type { RateOrder } from "../read-rate-question";
import { nameOf } from "../sorted-groups";

interface Props {
  readonly groups: readonly GroupRate[];
  readonly rates: FailureRates;
  readonly address: string;
  readonly order: RateOrder;
}

/** A drawing holds this many rows at most; the table below it holds all. */
const mostRows = 24;

export function RateChart({ groups, rates, address, order }: Props) {
  const { question, fleet } = rates;
  const drawn = groups.slice(0, mostRows);
  const figure = rateRows(
    drawn.flatMap((group) =>
      group.kind === "rate"
        ? [
            {
              key: keyText(group.key),
              label: nameOf(group),
              estimate: group.estimate,
              href: lifeAddress(group.key, question),
            },
          ]
        : [],
    ),
    {
      order: "given",
      counted: countedNoun(question.counting),
      fleet:
        fleet.kind === "rate" && comparable(rates)
          ? { key: "all together", label: "All together", estimate: fleet.estimate }
          : undefined,
    },
  );
  if (figure.kind === "no-groups") return null;
  const by = question.by.map((dimension) => dimensionNames[dimension].toLowerCase()).join(" and ");
  return (
    <Figure
      takeaway={`Rates by ${by}, ${orderWords(order, question.by)}`}
      csvHref={`/repeats/rates.csv?${address}`}
      table={
        <Table
          caption={`Rates by ${by}`}
          columns={columnsOf(rates)}
          rows={groups.map((group) => rateCells(group))}
          rowKey={(row) => row.key}
          narrow="scroll"
        />
      }
      note={
        <>
          <p>
            Thick part: half of the doubt; thin part: the {Math.round(100 * question.level)} in 100 range. Two ranges
            that overlap may still differ.
          </p>
          {groups.length > mostRows && (
            <p>
              The drawing holds the first {mostRows} of {formatCounted(groups.length, "group")}; the table has all.
            </p>
          )}
        </>
      }
    >
      <DotIntervalRows label={`Rates by ${by}`} figure={figure} />
    </Figure>
  );
}

function orderWords(order: RateOrder, by: FailureRates["question"]["by"]): string {
  if (order === "lowest") return "the highest believable first";
  return by.includes("age") ? "from young to old" : "by name";
}

/** Components and symptoms share the units of the fleet, so its rate is their sum and no yardstick for one of them. */
function comparable({ question }: FailureRates): boolean {
  return !question.by.some((dimension) => dimension === "component" || dimension === "symptom");
}

function columnsOf({ question }: FailureRates): Column<RateCells>[] {
  return [
    ...question.by.map((dimension, index) => ({
      key: dimension,
      head: dimensionNames[dimension],
      cell: (row: RateCells) => row.names[index] ?? "",
    })),
    { key: "events", head: "Events", kind: "number" as const, cell: (row) => row.events },
    { key: "years", head: "Unit-years", kind: "number" as const, cell: (row) => row.unitYears },
    { key: "rate", head: "Per 100 a year", kind: "number" as const, cell: (row) => row.rate },
    { key: "low", head: "From", kind: "number" as const, cell: (row) => row.low },
    { key: "high", head: "To", kind: "number" as const, cell: (row) => row.high },
    { key: "method", head: "Method", cell: (row) => row.method },
  ];
}
