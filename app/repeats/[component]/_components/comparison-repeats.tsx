import { CurvePair } from "@/app/_charts/curve-pair";
import { Figure } from "@/app/_ui/figure";
import { type Column, Table } from "@/app/_ui/table";
import type { ComparedSide, GroupComparison } from "@/lib/failures/compare-groups";
import { daysPerMonth, daysPerYear } from "@/lib/failures/rate-question";
import { curvePair } from "@/lib/figures/curve-pair";
import { meanSteps } from "@/lib/figures/mean-steps";
import { formatCount } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";
import type { RecurrenceDifference } from "@/lib/statistics/recurrence/recurrence-difference";
import { repeatsWords } from "../../comparison-words";
import { meanWords } from "./repeated-failures";

interface Props {
  readonly comparison: GroupComparison;
  readonly csvHref: string;
}

/** Failures per unit by age, repeats counted, of both groups. */
export function ComparisonRepeats({ comparison, csvHref }: Props) {
  const { first, second, repeatsByAge } = comparison;
  const [one, other] = [first, second].map(({ life }) => meanSteps(life.recurrence, life.unitsFromAge));
  if (one?.kind !== "steps" || other?.kind !== "steps")
    return <p>Repeat failures: too few of one group were watched when they failed to draw both lines.</p>;
  return (
    <Figure
      takeaway={`Failures per unit by age of the unit, repeats included. ${repeatsWords(comparison)}`}
      csvHref={csvHref}
      table={
        <Table
          caption="Failures per unit by age, and their difference"
          columns={columnsOf(first, second)}
          rows={repeatsByAge.filter(({ kind }) => kind !== "beyond-data")}
          rowKey={({ age }) => String(age)}
          narrow="scroll"
        />
      }
      note={<RepeatNotes comparison={comparison} />}
    >
      <CurvePair
        label="Failures per 100 units by age of the unit, two groups"
        pair={curvePair({ name: first.name, curve: one }, { name: second.name, curve: other })}
      />
    </Figure>
  );
}

function RepeatNotes({ comparison: { first, second, repeatsByAge } }: { readonly comparison: GroupComparison }) {
  if (repeatsByAge.length > 0) return <p>Four ages are compared and no more, since many ages would be many tests.</p>;
  const months = ({ life }: ComparedSide) => formatCount(life.unitsFromAge / daysPerMonth);
  return (
    <p>
      Group 1 was watched from {months(first)} months of age on and group 2 from {months(second)}, so the two lines
      begin at different ages and their heights are not compared; the test looks only at ages at which both were
      watched.
    </p>
  );
}

function columnsOf(first: ComparedSide, second: ComparedSide): Column<RecurrenceDifference>[] {
  return [
    { key: "age", head: "Years of age", kind: "number", cell: ({ age }) => Math.round(age / daysPerYear) },
    { key: "first", head: `1 ${first.name}`, cell: ({ age }) => meanAt(first, age) },
    { key: "second", head: `2 ${second.name}`, cell: ({ age }) => meanAt(second, age) },
    { key: "difference", head: "Difference a unit", cell: differenceWords },
  ];
}

function meanAt({ life }: ComparedSide, age: number): string {
  const { recurrence } = life;
  const step = recurrence.kind === "curve" ? recurrence.steps.findLast((one) => one.age <= age) : undefined;
  return step === undefined ? "none seen" : meanWords(step);
}

function differenceWords(entry: RecurrenceDifference): string {
  if (entry.kind === "beyond-data") return "not watched so long";
  const number = signed(entry.difference);
  return entry.kind === "difference"
    ? `${number} (${signed(entry.low)} to ${signed(entry.high)})`
    : `${number}, no range: too few to judge by`;
}

function signed(value: number): string {
  return `${value > 0 ? "+" : value < 0 ? "−" : ""}${formatDecimal(Math.abs(value), 3)}`;
}
