import Link from "next/link";
import { type Column, Table } from "@/app/_ui/table";
import type { FailureRates, GroupRate } from "@/lib/failures/failure-rates";
import { keyText } from "@/lib/failures/groups";
import { jobsBehind } from "../rate-address";
import { rateCells } from "../rate-cells";
import { countedNoun, dimensionNames } from "../rate-wording";

interface Props {
  readonly caption: string;
  readonly rows: readonly GroupRate[];
  readonly rates: FailureRates;
}

/** Groups in figures: counts that lead to their jobs, exposure, rate, range and what it can bear; all together last. */
export function RateTable({ caption, rows, rates }: Props) {
  return (
    <Table
      caption={caption}
      columns={columnsOf(rates)}
      rows={rows}
      rowKey={(group) => keyText(group.key)}
      closing={rates.fleet.kind === "rate" ? [rates.fleet] : []}
      narrow="scroll"
    />
  );
}

function columnsOf(rates: FailureRates): Column<GroupRate>[] {
  const { question } = rates;
  return [
    ...question.by.map((dimension, index) => ({
      key: dimension,
      head: dimensionNames[dimension],
      cell: (group: GroupRate) => group.key[index]?.name ?? (index === 0 ? "All together" : ""),
    })),
    {
      key: "events",
      head: countedNoun(question.counting) === "failures" ? "Failures" : "Jobs",
      kind: "number" as const,
      cell: (group) => {
        const { events } = rateCells(group);
        return events === "0" ? events : <Link href={jobsBehind(group.key, question)}>{events}</Link>;
      },
    },
    { key: "years", head: "Unit-years", kind: "number" as const, cell: (group) => rateCells(group).unitYears },
    { key: "rate", head: "Per 100 a year", kind: "number" as const, cell: (group) => rateCells(group).rate },
    { key: "low", head: "From", kind: "number" as const, cell: (group) => rateCells(group).low },
    { key: "high", head: "To", kind: "number" as const, cell: (group) => rateCells(group).high },
    ...(rates.groups.some((group) => group.kind === "rate" && group.likeAges.kind !== "nothing-beside-it")
      ? [{ key: "ratio", head: "Times what its ages predict", cell: (group: GroupRate) => rateCells(group).likeAges }]
      : []),
    { key: "evidence", head: "Evidence", cell: (group) => rateCells(group).evidence },
  ];
}
