import { StepCurve } from "@/app/_charts/step-curve";
import { Figure } from "@/app/_ui/figure";
import { type Column, Table } from "@/app/_ui/table";
import type { LifeDetail } from "@/lib/failures/life-detail";
import { type DrawnMeans, type MeanAt, meanSteps } from "@/lib/figures/mean-steps";
import { capitalised } from "@/lib/format/capitalised";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { describeMean } from "@/lib/format/format-mean";
import type { RecurrenceStep } from "@/lib/statistics/recurrence/mean-cumulative-function";

interface Props {
  readonly life: LifeDetail;
  readonly csvHref: string;
}

/** Mean number of failures per unit by age of the unit: the only curve here that counts a unit's second failure. */
export function RepeatedFailures({ life, csvHref }: Props) {
  const figure = meanSteps(life.recurrence, life.unitsFromAge);
  if (figure.kind === "too-few-to-draw")
    return <p>Under 20 units were watched when they failed: too few to draw failures per unit.</p>;
  if (figure.kind !== "steps") return null; // the curve above has already said that nothing failed
  return (
    <Figure
      takeaway={capitalised(meanFinding(figure))}
      csvHref={csvHref}
      note={
        <>
          <p>
            Repeats are counted, and age is that of the machine. A straight line means that age makes no difference; the
            range takes each unit as one, so it holds also where the same units fail again and again.
          </p>
          {figure.stopped !== undefined && <p>{figure.stopped}</p>}
        </>
      }
      table={
        <Table
          caption="Failures per unit, repeats included, by age of the unit"
          columns={meanColumns}
          rows={figure.byYear}
          rowKey={({ years }) => String(years)}
        />
      }
    >
      <StepCurve label="Failures per 100 units by age of the unit, repeats included" figure={figure} />
    </Figure>
  );
}

/** "By 5 years, 0.21 failures a unit (0.18 to 0.25), repeats included: 123 failures". */
function meanFinding({ byYear, fromMonths }: DrawnMeans): string {
  const at = byYear.findLast(({ years }) => years <= 5);
  if (at === undefined) return "Failures per unit by age of the unit, repeats included";
  return `${lateStart(fromMonths)}by ${formatCounted(at.years, "year")}, ${meanWords(at.step)}, repeats included: ${formatCounted(at.failures, "failure")}, ${formatCounted(at.step.atRisk, "unit")} watched that long`;
}

/** Where nothing was watched from new, a number by an age is only that since watching began. */
function lateStart(fromMonths: number): string {
  return fromMonths < 1 ? "" : `Not watched before ${formatCount(fromMonths)} months of age; from there `;
}

const meanColumns: readonly Column<MeanAt>[] = [
  { key: "year", head: "Years of age", kind: "number", cell: ({ years }) => years },
  { key: "mean", head: "Failures per unit", cell: ({ step }) => meanWords(step) },
  { key: "failures", head: "Failures so far", kind: "number", cell: ({ failures }) => formatCount(failures) },
  {
    key: "running",
    head: "Units watched at the last failure",
    kind: "number",
    cell: ({ step }) => formatCount(step.atRisk),
  },
];

export function meanWords({ mean, limits }: RecurrenceStep): string {
  return limits.kind === "limits"
    ? describeMean(mean, limits.low, limits.high)
    : `${describeMean(mean, mean, mean)}, no range: a single unit left`;
}
