import { dayFromNumber } from "@/lib/calendar/day-number";
import { fewestDelayJobs, fewestRegularLoads, type LoadDelay } from "@/lib/failures/reporting-delay";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatDay } from "@/lib/format/format-day";
import { DelayTable } from "./delay-table";

interface Props {
  readonly loading: LoadDelay;
  readonly level: number;
}

/** How long closed jobs wait for the file that brings them; or what is missing to tell. */
export function LoadingDelay({ loading, level }: Props) {
  if (loading.kind === "learnt") {
    return (
      <>
        <p>
          Learnt from {formatCounted(loading.jobs, "job")} closed on or after{" "}
          {formatDay(dayFromNumber(loading.loads.firstOn))}, the day of the first load, that came in on{" "}
          {formatCounted(loading.loads.days, "day")} with a load.
        </p>
        <DelayTable
          caption="Share of closed jobs loaded by days after closing"
          delay={loading.delay}
          level={level}
          done="Loaded"
        />
      </>
    );
  }
  return (
    <>
      <p>
        <strong>Not enough regular loads to tell.</strong> A first load of past years is history and no delay, so only
        jobs closed on or after the day of the first load count.
      </p>
      <p>
        {loading.loads === undefined
          ? "No load has brought jobs that are still here."
          : `The first load of jobs was on ${formatDay(dayFromNumber(loading.loads.firstOn))}, and loads came on ${formatCounted(loading.loads.days, "day")} in all. Jobs on record that were closed since: ${formatCount(loading.jobs)}.`}{" "}
        Needed are loads on {fewestRegularLoads} days after the first one and {fewestDelayJobs} such jobs. Until then
        jobs that are closed but not yet loaded are in no number, and the numbers speak up to the last day on which a
        job was closed.
      </p>
    </>
  );
}
