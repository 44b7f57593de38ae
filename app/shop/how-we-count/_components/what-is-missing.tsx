import Link from "next/link";
import { fewestDelayJobs, fewestRegularLoads } from "@/lib/failures/reporting-delay";
import { completeShare, daysUntilShare, fewestJobsTogether } from "@/lib/failures/reporting-delay-correction";
import { formatCounted } from "@/lib/format/format-count";
import { found, fraction, indexed, maths, over } from "../_maths/maths";
import type { CountedView } from "../load-counted-view";
import { Definition } from "./definition";
import { JobsLeftOut, UnitsCounted } from "./left-out-tables";

export function WhatIsMissing({ view }: { readonly view: CountedView }) {
  return (
    <>
      <Definition of="left-out">
        <p>Of all that is on record here, as it stands now:</p>
        <UnitsCounted counted={view.counted} />
        <JobsLeftOut jobs={view.counted.jobs} />
      </Definition>
      <Definition of="bias">
        <ul>
          <li>
            <strong>Machines out of warranty leave the data.</strong> Their owners scrap them or call somebody else, so
            old machines look better than they are.
          </li>
          <li>
            <strong>Machines in warranty are over-represented.</strong> A call that costs the owner nothing is made
            sooner.
          </li>
          <li>
            <strong>Units that nobody called about are unseen.</strong> The denominator has to come from units sold,
            installed or registered; without such a register there are counts and shares, and no rates.
          </li>
          <li>
            <strong>A job without a serial cannot be linked.</strong> It is in lists and in no rate per unit.
          </li>
          <li>
            <strong>A part that was replaced has not always failed.</strong> Only the confirmed cause makes a failure;
            an unconfirmed one is a call.
          </li>
        </ul>
        <p>None of this is in any range. Ranges cover chance only.</p>
      </Definition>
      <Definition
        of="reporting-delay"
        formula={[
          maths`F ( t ) = ${over("∏", "s > t")} ( 1 − ${fraction(indexed("n", "s"), indexed("N", "s"))} )`,
          maths`${found("N")} = n ${fraction("D", maths`${over("∑", "days")} F ( age )`)}`,
        ]}
        letters="n of s: jobs closed s days after the call; N of s: jobs closed within s days, both of calls at least s days old; n: jobs on record of D days"
        example={delayExample(view)}
        source="Kalbfleisch and Lawless (1991), Statistica Sinica 1, 19–32; Kalbfleisch, Lawless and Robinson (1991), Technometrics 33, 273–285. The range is this program’s own: a negative binomial count, widened by the doubt of F, checked by simulation."
      >
        <p>
          A job comes in only once it is closed, so the last weeks always look better than they will. How long jobs take
          from the call to closing is learnt from the data, allowing for the fact that recent calls show their quick
          jobs only. What is on record is then divided by the share that can be on record. Calls are taken to come at an
          even pace within a week, and weeks are taken together until they hold {fewestJobsTogether} jobs. Weeks of
          which {Math.round(100 * completeShare)} in 100 jobs are closed count as complete.
        </p>
        <p>
          From closing to the load that brings a job here is a delay of its own. A first load of past years is history
          and no delay, so it is learnt only from jobs closed since the day of the first load, once there are loads on{" "}
          {fewestRegularLoads} more days and {fewestDelayJobs} such jobs.{" "}
          <Link href="/shop/reporting-delay">How late jobs come in here</Link>
        </p>
      </Definition>
    </>
  );
}

function delayExample({ delays }: CountedView): string | undefined {
  if (delays?.openedToClosed.kind !== "learnt") return undefined;
  const { delay, jobs } = delays.openedToClosed;
  const days = (share: number) => formatCounted(daysUntilShare(delay, share), "day");
  return `Of ${formatCounted(jobs, "job")} of the last year half were closed within ${days(0.5)} of the call, 9 in 10 within ${days(0.9)}.`;
}
