import { HowCounted } from "@/app/_ui/how-counted";
import { dayFromNumber } from "@/lib/calendar/day-number";
import { delayLearningDays } from "@/lib/failures/reporting-delay";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatDay } from "@/lib/format/format-day";
import type { DelayView } from "../load-delay-view";

/** What the delays rest on, and what they leave out. */
export function DelayBasis({ view: { delays, level } }: { readonly view: DelayView }) {
  const { lastClosedOn, openedToClosed, withoutOpening } = delays;
  return (
    <>
      <p>
        {formatCounted(openedToClosed.jobs, "closed job")} whose customer called in the {formatCount(delayLearningDays)}{" "}
        days up to {formatDay(dayFromNumber(lastClosedOn))}, the last day on which any job was closed.
      </p>
      {withoutOpening > 0 && (
        <p>
          {formatCounted(withoutOpening, "closed job")} of that time without a day of the call: left out, since nothing
          tells how long they took.
        </p>
      )}
      <p>
        Jobs called in lately are here only if they were quick. That is allowed for: <HowCounted of="reporting-delay" />
        . Ranges hold {Math.round(100 * level)} times in 100.
      </p>
      <p>All jobs are held to take equally long, whatever failed and whoever pays.</p>
    </>
  );
}
