import { DotIntervalRows } from "@/app/_charts/dot-interval-rows";
import { Figure } from "@/app/_ui/figure";
import type { FailureRates, GroupRate } from "@/lib/failures/failure-rates";
import { keyText } from "@/lib/failures/groups";
import { rateRows } from "@/lib/figures/rate-rows";
import { formatCounted } from "@/lib/format/format-count";
import { jobsBehind, lifeAddress } from "../rate-address";
import { countedNoun, dimensionNames } from "../rate-wording";
import type { RateOrder } from "../read-rate-question";
import { nameOf } from "../sorted-groups";
import { RateTable } from "./rate-table";

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
              jobsHref: group.estimate.events > 0 ? jobsBehind(group.key, question) : undefined,
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
      table={<RateTable caption={`Rates by ${by}`} rows={groups} rates={rates} />}
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
  if (by.includes("age")) return "from young to old";
  return by.includes("year") ? "as they came" : "by name";
}

/** Components, symptoms and causes share the units of the fleet, so its rate is their sum and no yardstick for one of them. */
function comparable({ question }: FailureRates): boolean {
  return !question.by.some(
    (dimension) => dimension === "component" || dimension === "symptom" || dimension === "cause",
  );
}
