import Link from "next/link";
import { IntervalAxis, IntervalMark } from "@/app/_charts/interval-mark";
import { EmptyState } from "@/app/_ui/empty-state";
import { EstimateText } from "@/app/_ui/estimate-text";
import { type Column, Table } from "@/app/_ui/table";
import type { FailureRates, GroupRate } from "@/lib/failures/failure-rates";
import { keyText } from "@/lib/failures/groups";
import { type RateAxis, rateAxis } from "@/lib/figures/rate-axis";
import { formatCount } from "@/lib/format/format-count";
import { gradeOf } from "@/lib/statistics/estimate-grade";
import { jobsBehind } from "../rate-address";
import { countedNoun, dimensionNames } from "../rate-wording";
import type { RateOrder } from "../read-rate-question";
import { canBeJudged } from "../sorted-groups";
import { RateChart } from "./rate-chart";

interface Props {
  readonly groups: readonly GroupRate[];
  readonly rates: FailureRates;
  /** Query string of this very view. */
  readonly address: string;
  readonly order: RateOrder;
}

/** The groups as a drawing, as a table with marks, and behind a fold those that are too small to judge. */
export function RateResult({ groups, rates, address, order }: Props) {
  const judged = groups.filter((group) => canBeJudged(group) && eventsOf(group) > 0);
  const unseen = groups.filter((group) => canBeJudged(group) && eventsOf(group) === 0);
  const small = groups.filter((group) => !canBeJudged(group));
  if (groups.length === 0) {
    return (
      <EmptyState kind="filtered-away" title="No unit was at risk in this view">
        <p>
          <Link href="/repeats">Show all units</Link>, or widen the filter.
        </p>
      </EmptyState>
    );
  }
  return (
    <>
      {judged.length > 0 && (
        <>
          <RateChart groups={groups.filter(canBeJudged)} rates={rates} address={address} order={order} />
          <RateTable caption="Rates with their ranges" rows={judged} rates={rates} />
        </>
      )}
      {unseen.length > 0 && (
        <details>
          <summary>None seen ({unseen.length})</summary>
          <RateTable caption="Groups without an event: what could still fit" rows={unseen} rates={rates} />
        </details>
      )}
      {small.length > 0 && (
        <details>
          <summary>Too few to judge ({small.length})</summary>
          <RateTable
            caption="Groups with less than 10 unit-years: counts only, never ranked"
            rows={small}
            rates={rates}
          />
        </details>
      )}
    </>
  );
}

function RateTable({
  caption,
  rows,
  rates,
}: {
  readonly caption: string;
  readonly rows: readonly GroupRate[];
  readonly rates: FailureRates;
}) {
  const estimates = rows.flatMap((group) => (group.kind === "rate" ? [group.estimate] : []));
  const axis = estimates.length === 0 ? undefined : rateAxis(estimates);
  const closing = rates.fleet.kind === "rate" ? [rates.fleet] : [];
  return (
    <Table
      caption={caption}
      columns={columnsOf(rates, axis)}
      rows={rows}
      rowKey={(group) => keyText(group.key)}
      closing={closing}
    />
  );
}

function columnsOf({ question }: FailureRates, axis: RateAxis | undefined): Column<GroupRate>[] {
  const counted = countedNoun(question.counting);
  return [
    ...question.by.map((dimension, index) => ({
      key: dimension,
      head: dimensionNames[dimension],
      cell: (group: GroupRate) => group.key[index]?.name ?? (index === 0 ? "All together" : ""),
    })),
    {
      key: "rate",
      head: "Rate",
      cell: (group) =>
        group.kind === "rate" ? (
          <EstimateText estimate={group.estimate} frame={axis?.frame} counted={counted} />
        ) : (
          `${group.events} without exposure: no rate`
        ),
    },
    {
      key: "mark",
      head: "Range",
      kind: "mark" as const,
      wideOnly: true,
      headNote: axis && <IntervalAxis axis={axis} />,
      cell: (group) =>
        group.kind === "rate" && axis !== undefined ? (
          <IntervalMark estimate={group.estimate} axis={axis} counted={counted} besideText />
        ) : (
          ""
        ),
    },
    {
      key: "events",
      head: counted === "failures" ? "Failures" : "Jobs",
      kind: "number" as const,
      cell: (group) => {
        const events = eventsOf(group);
        return events === 0 ? "0" : <Link href={jobsBehind(group.key, question)}>{formatCount(events)}</Link>;
      },
    },
    {
      key: "years",
      head: "Unit-years",
      kind: "number" as const,
      cell: (group) => formatCount(group.kind === "rate" ? Math.round(group.estimate.n) : 0),
    },
    {
      key: "grade",
      head: "Evidence",
      wideOnly: true,
      cell: (group) => (group.kind === "rate" ? evidenceWords(group) : "no exposure"),
    },
  ];
}

/** Firm, loose or thin; and that failures bunch, where that is why a range is wide. */
function evidenceWords(group: Extract<GroupRate, { kind: "rate" }>): string {
  const grade = gradeOf(group.estimate);
  return group.estimate.method === "poisson-robust" ? `${grade}; wider because the same units fail again` : grade;
}

function eventsOf(group: GroupRate): number {
  return group.kind === "rate" ? group.estimate.events : group.events;
}
