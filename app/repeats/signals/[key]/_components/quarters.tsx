import { DotIntervalRows } from "@/app/_charts/dot-interval-rows";
import { Figure } from "@/app/_ui/figure";
import { type Column, Table } from "@/app/_ui/table";
import type { StoredSignal } from "@/db/queries/signal-list";
import { dayFromNumber } from "@/lib/calendar/day-number";
import { rateRows } from "@/lib/figures/rate-rows";
import { formatPlainDay } from "@/lib/format/format-day";
import { formatDecimal } from "@/lib/format/format-decimal";
import { lastQuarters, type PeriodCounts } from "@/lib/signals/weekly-ratios";
import { firstDayOf, lastDayOf } from "@/lib/signals/weeks";
import { observedExpectedEstimate } from "@/lib/statistics/ratio-estimate";
import { signalFileHref, signalLevel } from "../../signal-words";

const shownQuarters = 12;

/** Observed over expected, quarter by quarter: since when, and is it still going on? */
export function Quarters({ signal }: { readonly signal: StoredSignal }) {
  const quarters = lastQuarters(signal.lead, shownQuarters);
  const figure = rateRows(
    quarters.map((quarter) => ({
      key: String(quarter.from),
      label: spanWords(quarter),
      estimate: observedExpectedEstimate({ ...quarter, level: signalLevel }),
    })),
    { order: "given", against: "what their ages predict" },
  );
  if (figure.kind === "no-groups") return null;
  // Where every quarter has too few to judge there is nothing to draw.
  if (figure.rows.length === 0)
    return (
      <Table caption="By quarter of 13 weeks" columns={columns} rows={quarters} rowKey={({ from }) => String(from)} />
    );
  return (
    <Figure
      takeaway="Counted over expected, quarter by quarter"
      csvHref={signalFileHref(signal.key, "weeks.csv")}
      note={<p>The line is at 1, as many as expected. The newest weeks lack jobs that are not closed yet.</p>}
      table={
        <Table caption="By quarter of 13 weeks" columns={columns} rows={quarters} rowKey={({ from }) => String(from)} />
      }
    >
      <DotIntervalRows label="Counted over expected by quarter" figure={figure} even={1} />
    </Figure>
  );
}

function spanWords({ from, until }: PeriodCounts): string {
  return `${formatPlainDay(dayFromNumber(firstDayOf(from)))} to ${formatPlainDay(dayFromNumber(lastDayOf(until - 1)))}`;
}

const columns: readonly Column<PeriodCounts>[] = [
  { key: "quarter", head: "Weeks", cell: spanWords },
  { key: "counted", head: "Counted", kind: "number", cell: ({ observed }) => observed },
  { key: "expected", head: "Expected", kind: "number", cell: ({ expected }) => formatDecimal(expected, 1) },
];
