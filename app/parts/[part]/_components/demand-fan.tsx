import { FanChart } from "@/app/_charts/fan-chart";
import { Figure } from "@/app/_ui/figure";
import { type Column, Table } from "@/app/_ui/table";
import type { PartPage } from "@/db/queries/part-page";
import type { Day } from "@/lib/calendar/day";
import { fan, monthWords } from "@/lib/figures/fan";
import { monthAfter } from "@/lib/forecast/forecast-month";
import type { StoredMonth } from "@/lib/forecast/stored-outlook";
import { run } from "@/lib/format/describe-need";
import { formatCount } from "@/lib/format/format-count";

interface Props {
  readonly part: PartPage;
  readonly csvHref: string;
}

interface Row {
  readonly day: Day;
  readonly used: number | undefined;
  readonly month: StoredMonth | undefined;
}

/** Two years back and up to two ahead, with the table behind it. */
export function DemandFan({ part, csvHref }: Props) {
  const { outlook, history, forecastFrom } = part;
  if (outlook.kind !== "forecast") return null;
  const question = { history, months: outlook.months, forecastFrom };
  return (
    <Figure
      takeaway={`What was used each month, and what is expected: the bands hold the count 30, 60 and 90 times in 100`}
      csvHref={csvHref}
      note={
        <p>
          The broken line is the mean of all futures; none of them runs along it. Bands are runs of whole pieces, so
          they hold somewhat more or less than they say.
        </p>
      }
      table={
        <Table caption="By month" columns={columns} rows={monthRows(part)} rowKey={({ day }) => day} narrow="scroll" />
      }
    >
      <FanChart
        label={`${part.partNumber} by month`}
        wide={fan({ ...question, before: 24, after: 24 })}
        narrow={fan({ ...question, before: 12, after: 6 })}
      />
    </Figure>
  );
}

/** Months of the past two years and of the forecast. */
export function monthRows({ history, outlook, forecastFrom }: PartPage): readonly Row[] {
  const past = history.slice(-24);
  return [
    ...past.map((used, i) => ({ day: monthAfter(forecastFrom, i - past.length), used, month: undefined })),
    ...(outlook.kind === "forecast" ? outlook.months : []).map((month, i) => ({
      day: monthAfter(forecastFrom, i),
      used: undefined,
      month,
    })),
  ];
}

const band = (key: "band30" | "band60" | "band90") => (row: Row) =>
  row.month === undefined ? "" : run(row.month[key].low, row.month[key].high);

const columns: readonly Column<Row>[] = [
  { key: "month", head: "Month", cell: (row) => monthWords(row.day) },
  { key: "used", head: "Used", kind: "number", cell: (row) => (row.used === undefined ? "" : formatCount(row.used)) },
  { key: "30", head: "30 in 100", kind: "number", cell: band("band30") },
  { key: "60", head: "60 in 100", kind: "number", cell: band("band60") },
  { key: "90", head: "90 in 100", kind: "number", cell: band("band90") },
];
