import Link from "next/link";
import { type Column, Table } from "@/app/_ui/table";
import type { WordCount } from "@/db/queries/signal-jobs";
import { formatCount } from "@/lib/format/format-count";
import { describeShare } from "@/lib/format/format-share";
import { wilson } from "@/lib/statistics/intervals/wilson";
import { jobsOfSignal, signalLevel } from "../../signal-words";
import type { SignalView } from "../load-signal";

/** Which jobs stand behind it, and what was noticed in them, beside the same failures of other machines of the kind. */
export function Behind({ view: { signal, jobs } }: { readonly view: SignalView }) {
  const columns = columnsFor(jobs.jobs, jobs.elsewhere);
  const isComponent = signal.wordKind === "component";
  return (
    <section className="stack-tight">
      <h2>
        <Link href={jobsOfSignal(signal)}>{formatCount(jobs.jobs)} jobs behind this</Link>
      </h2>
      <p>
        The latest:{" "}
        {jobs.numbers.map((number, place) => (
          <span key={number}>
            {place > 0 && ", "}
            <Link href={`/jobs/${encodeURIComponent(number)}`}>{number}</Link>
          </span>
        ))}
        .
      </p>
      <Table
        caption={isComponent ? "What the customer noticed" : "What was found at fault"}
        columns={columns}
        rows={jobs.words}
        rowKey={({ key }) => key}
      />
      {jobs.faultCodes.length === 0 ? (
        <p>None of these jobs has a fault code on file.</p>
      ) : (
        <Table caption="Fault codes shown" columns={columns} rows={jobs.faultCodes} rowKey={({ key }) => key} />
      )}
      <p className="small">
        Shares of the jobs since the onset, with ranges each by itself. Others: the same failures in the same weeks on
        all other machines of the kind.
      </p>
    </section>
  );
}

function columnsFor(jobs: number, elsewhere: number): readonly Column<WordCount>[] {
  return [
    { key: "name", head: "What", cell: ({ name }) => name },
    { key: "jobs", head: "Jobs", kind: "number", cell: (row) => row.jobs },
    { key: "share", head: "Of these", cell: (row) => shareWords(row.jobs, jobs) },
    { key: "elsewhere", head: "Of others", cell: (row) => shareWords(row.elsewhere, elsewhere), wideOnly: true },
  ];
}

function shareWords(events: number, trials: number): string {
  if (trials === 0) return "no others";
  const { point, low, high } = wilson({ events, trials, confidence: signalLevel, continuityCorrection: false });
  return describeShare(point, low, high);
}
