import { CurvePair } from "@/app/_charts/curve-pair";
import { Figure } from "@/app/_ui/figure";
import { type Column, Table } from "@/app/_ui/table";
import type { ComparedSide, GroupComparison } from "@/lib/failures/compare-groups";
import { curvePair } from "@/lib/figures/curve-pair";
import { type StepCurve, stepCurve } from "@/lib/figures/step-curve";
import { formatCount } from "@/lib/format/format-count";
import { describeShare } from "@/lib/format/format-share";
import { shareAt } from "../share-at";

interface Props {
  readonly comparison: GroupComparison;
  readonly csvHref: string;
}

/** Share failed by age of the part, of both groups on one drawing. */
export function ComparisonCurves({ comparison, csvHref }: Props) {
  const { first, second } = comparison;
  const [one, other] = [first, second].map(({ life }) => stepCurve(life.curve, life.atYears));
  if (one?.kind !== "steps" || other?.kind !== "steps")
    return (
      <p>
        No two curves to draw: {notDrawn(first, one)} {notDrawn(second, other)}
      </p>
    );
  const notes = [first, second].flatMap(({ name }, i) => {
    const { stopped } = i === 0 ? one : other;
    return stopped === undefined ? [] : [`${i + 1} ${name}: ${stopped}`];
  });
  return (
    <Figure
      takeaway="Share failed by age of the part"
      csvHref={csvHref}
      note={
        <>
          {notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
          <p>Each line has the range of its own; whether two ranges overlap does not tell whether the groups differ.</p>
        </>
      }
      table={
        <Table
          caption="At whole years of age, as far as both lines go"
          columns={columnsOf(comparison)}
          rows={one.watched.map(({ months }) => months).filter((months) => months > 0 && months <= other.endMonths)}
          rowKey={String}
          narrow="scroll"
        />
      }
    >
      <CurvePair
        label="Share failed by age of the part, two groups"
        pair={curvePair({ name: first.name, curve: one }, { name: second.name, curve: other })}
      />
    </Figure>
  );
}

function notDrawn({ name }: ComparedSide, curve: StepCurve | undefined): string {
  switch (curve?.kind) {
    case "nobody-failed":
      return `none of ${name} failed in ${formatCount(Math.floor(curve.untilMonths))} months of age.`;
    case "nobody-watched":
      return `nothing of ${name} was watched for any time.`;
    case "too-few-to-draw":
      return `of ${name} too few were watched; one more failure would move the line by more than 5 in 100.`;
    default:
      return "";
  }
}

function columnsOf({ first, second }: GroupComparison): Column<number>[] {
  const share = ({ life }: ComparedSide, months: number) => {
    const at = shareAt(life.curve, months);
    return at === undefined ? "none seen" : describeShare(at.failed, at.low, at.high);
  };
  return [
    { key: "age", head: "Months of age", kind: "number", cell: (months) => formatCount(months) },
    { key: "first", head: `1 ${first.name}`, cell: (months) => share(first, months) },
    { key: "second", head: `2 ${second.name}`, cell: (months) => share(second, months) },
  ];
}
