import { ReadingGauge } from "@/app/_charts/reading-gauge";
import { Notice } from "@/app/_ui/notice";
import { type Column, Table } from "@/app/_ui/table";
import type { PacketReading } from "@/lib/claims/packet";
import { packetReadings } from "@/lib/claims/packet-readings";
import type { JobRecord } from "@/lib/domain/job";
import type { ExpectedRange } from "@/lib/domain/reading";
import { cautions } from "@/lib/evidence/cautions";
import { formatOutcome } from "@/lib/format/format-reading";

interface Props {
  readonly record: JobRecord;
  readonly ranges: readonly ExpectedRange[];
}

/** Every reading against what the sheet expects, under the cautions that belong to taking it. */
export function JobReadings({ record, ranges }: Props) {
  const readings = packetReadings(record, ranges);
  if (readings.length === 0) return <p>No readings were written down on this job.</p>;
  const keys = [...new Set(readings.flatMap((reading) => reading.cautions))];
  return (
    <section className="stack" id="readings">
      <h2>Readings</h2>
      {keys.length > 0 && (
        <Notice status="watch" title="Before measuring again">
          <ul>
            {keys.map((key) => (
              <li key={key}>{cautions[key].text}</li>
            ))}
          </ul>
        </Notice>
      )}
      <Table
        caption="Readings in the order in which they were taken"
        captionHidden
        columns={columns}
        rows={readings}
        rowKey={(reading) => String(reading.number)}
      />
    </section>
  );
}

const columns: readonly Column<PacketReading>[] = [
  { key: "check", head: "Check", cell: (reading) => reading.check },
  {
    key: "found",
    head: "Found, and expected",
    cell: (reading) =>
      reading.range === undefined ? (
        formatOutcome(reading.outcome)
      ) : (
        <ReadingGauge outcome={reading.outcome} expected={reading.range} />
      ),
  },
  { key: "shows", head: "What it shows", cell: (reading) => reading.verdictWords },
  {
    key: "how",
    head: "How it was taken",
    wideOnly: true,
    cell: (reading) =>
      [reading.points, reading.power.replaceAll("_", " "), ...reading.conditions]
        .filter((part) => part !== "")
        .join("; "),
  },
  {
    key: "sheet",
    head: "Range from",
    wideOnly: true,
    cell: (reading) => (reading.range === undefined ? "–" : `${reading.range.source} (${reading.range.mark})`),
  },
];
