import { Table } from "@/app/_ui/table";
import { dayFromNumber } from "@/lib/calendar/day-number";
import type { RecentWeek } from "@/lib/failures/reporting-delay-weeks";
import { describeCorrectedCount } from "@/lib/format/describe-corrected-count";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import type { DelayView } from "../load-delay-view";

/** What is on record of each of the last weeks and what it will come to. */
export function RecentWeeks({ view: { recent, weeks } }: { readonly view: DelayView }) {
  switch (recent.kind) {
    case "complete":
      return <p>Every week on record is complete.</p>;
    case "not-learnt":
      return (
        <p>
          {formatCounted(recent.jobs, "job")} of the last year cannot tell how many are still open, so no number is
          corrected.
        </p>
      );
    case "too-recent":
      return (
        <p>
          No job this young has ever been closed, so nothing can be said of the last{" "}
          {formatCounted(recent.weeks, "week")}.
        </p>
      );
    case "corrected":
      return (
        <>
          <p>{describeCorrectedCount(recent.count, recent) ?? "All of the last weeks’ jobs are on record."}</p>
          <WeekTable weeks={weeks} />
        </>
      );
  }
}

function WeekTable({ weeks }: { readonly weeks: readonly RecentWeek[] }) {
  return (
    <Table
      caption="Jobs by the week of the customer’s call"
      columns={[
        {
          key: "week",
          head: "Week",
          cell: ({ firstOn, lastOn }) =>
            `${formatPlainDay(dayFromNumber(firstOn))} to ${formatPlainDay(dayFromNumber(lastOn))}`,
        },
        { key: "record", head: "On record", kind: "number", cell: ({ count }) => formatCount(count.events) },
        { key: "expected", head: "Expected", cell: ({ count }) => expectedWords(count) },
      ]}
      rows={weeks}
      rowKey={({ firstOn }) => String(firstOn)}
    />
  );
}

function expectedWords(count: RecentWeek["count"]): string {
  if (count.kind === "too-recent") return "too recent to tell";
  return `${formatCount(Math.round(count.corrected))} (${formatCount(count.lo)} to ${formatCount(count.hi)})`;
}
