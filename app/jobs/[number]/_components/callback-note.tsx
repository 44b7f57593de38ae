import Link from "next/link";
import { Notice } from "@/app/_ui/notice";
import type { SuggestedCallback } from "@/db/queries/callbacks";
import { formatCounted } from "@/lib/format/format-count";

interface Props {
  readonly jobNumber: string;
  readonly callbacks: readonly SuggestedCallback[];
}

/** Says that a job seems to return to an earlier one, or a later one to it, by the rule for repeats. */
export function CallbackNote({ jobNumber, callbacks }: Props) {
  return callbacks.map(({ jobNumber: later, earlier, days }) => {
    const isLater = later === jobNumber;
    const other = isLater ? earlier : later;
    const set = `/jobs/${encodeURIComponent(later)}/edit?field=callback_of&text=${encodeURIComponent(earlier)}`;
    return (
      <Notice
        key={`${later} ${earlier}`}
        status="note"
        title={isLater ? "This looks like a callback" : "A later job looks like a callback to this one"}
      >
        <p>
          <Link href={`/jobs/${encodeURIComponent(other)}`}>Job {other}</Link>:{" "}
          {isLater
            ? `the same component of the same unit, completed ${formatCounted(days, "day")} before this was reported. Its file does not call it a callback.`
            : `the same component of the same unit, reported ${formatCounted(days, "day")} after this was completed.`}
        </p>
        <p>
          <Link href={set}>{isLater ? "Say that it is one" : `Say that ${later} is one`}</Link>
        </p>
      </Notice>
    );
  });
}
