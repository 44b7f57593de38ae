import { Table } from "@/app/_ui/table";
import { daysUntilShare } from "@/lib/failures/reporting-delay-correction";
import { formatCounted } from "@/lib/format/format-count";
import { describeShare } from "@/lib/format/format-share";
import type { EstimatedDelay } from "@/lib/statistics/delay/reporting-delay";
import { shareWithin } from "@/lib/statistics/delay/share-within";

interface Props {
  readonly caption: string;
  readonly delay: EstimatedDelay;
  readonly level: number;
  /** What has happened by then: "Closed", "Loaded". */
  readonly done: string;
}

/** The days that people ask about, as far as it takes for nearly all. */
export function DelayTable({ caption, delay, level, done }: Props) {
  const last = daysUntilShare(delay, 0.999);
  const rows = dayMarks.slice(0, 1 + dayMarks.filter((days) => days < last).length);
  return (
    <Table
      caption={caption}
      columns={[
        { key: "days", head: "Within", cell: (row) => formatCounted(row.days, "day") },
        {
          key: "share",
          head: done,
          cell: ({ share, low, high }) => (share === 1 ? "all" : describeShare(share, low, high)),
        },
      ]}
      rows={rows.map((days) => shareWithin(delay, days, level))}
      rowKey={(row) => String(row.days)}
    />
  );
}

const dayMarks: readonly number[] = [0, 1, 2, 3, 5, 7, 10, 14, 21, 28, 42, 56, 84, 112, 168, 252, 365];
