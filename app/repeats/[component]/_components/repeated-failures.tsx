import { type Column, Table } from "@/app/_ui/table";
import type { ComponentLife } from "@/lib/failures/component-life";
import { daysPerYear } from "@/lib/failures/rate-question";
import { formatCount } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";
import type { RecurrenceStep } from "@/lib/statistics/recurrence/mean-cumulative-function";

interface Row {
  readonly year: number;
  readonly step: RecurrenceStep;
}

/** Mean number of failures per unit by age of the unit: the only curve here that counts a unit's second failure. */
export function RepeatedFailures({ life }: { readonly life: ComponentLife }) {
  const { recurrence } = life;
  if (recurrence.kind !== "curve") return null;
  const years = Array.from({ length: Math.floor(recurrence.lastAge / daysPerYear) }, (_, index) => index + 1);
  const rows = years.flatMap((year): Row[] => {
    const step = recurrence.steps.filter(({ age }) => age <= year * daysPerYear).at(-1);
    return step === undefined ? [] : [{ year, step }];
  });
  if (rows.length === 0) return null;
  return (
    <Table
      caption="Failures per 100 units, repeats included, by age of the unit"
      columns={columns}
      rows={rows}
      rowKey={(row) => String(row.year)}
    />
  );
}

const columns: readonly Column<Row>[] = [
  { key: "year", head: "Years of age", kind: "number", cell: (row) => row.year },
  { key: "mean", head: "Failures per 100 units", cell: ({ step }) => meanWords(step) },
  {
    key: "running",
    head: "Units watched at the last failure",
    kind: "number",
    cell: ({ step }) => formatCount(step.atRisk),
  },
];

function meanWords({ mean, limits }: RecurrenceStep): string {
  const number = formatDecimal(100 * mean, 1);
  return limits.kind === "limits"
    ? `${number} (${formatDecimal(100 * limits.low, 1)} to ${formatDecimal(100 * limits.high, 1)})`
    : number;
}
