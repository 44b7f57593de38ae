import { Notice } from "@/app/_ui/notice";
import type { Day } from "@/lib/calendar/day";
import { monthWords } from "@/lib/figures/fan";
import type { Freshness } from "../_work/settle-state";

interface Props {
  readonly freshness: Freshness;
  readonly forecastFrom: Day | undefined;
}

/** What is shown is older than the records: it stays on the page, and the newer is being worked out. */
export function FreshnessNotice({ freshness, forecastFrom }: Props) {
  if (freshness.kind === "first-time")
    return (
      <Notice status="note" title="What is expected of each part is being worked out for the first time">
        <p>It takes some ten seconds for a thousand parts. Open this page again in a moment.</p>
      </Notice>
    );
  if (freshness.kind !== "behind") return null;
  return (
    <Notice status="note" title="The newest figures are being worked out">
      <p>
        {freshness.otherMonth && forecastFrom !== undefined
          ? `What stands here was worked out for ${monthWords(forecastFrom)} and the months after it.`
          : "What stands here does not know the latest changes of jobs and parts yet."}{" "}
        Open this page again in a moment.
      </p>
    </Notice>
  );
}
