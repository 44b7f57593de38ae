import Link from "next/link";
import { addDays } from "@/lib/calendar/day";
import { dayFromNumber } from "@/lib/calendar/day-number";
import type { FailureRates } from "@/lib/failures/failure-rates";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { countingName } from "../rate-wording";

/** What the rates rest on, and what they leave out. */
export function RateBasis({ rates }: { readonly rates: FailureRates }) {
  const { question, fleet, leftOut, unplacedUnits } = rates;
  const last = formatPlainDay(addDays(dayFromNumber(question.until), -1));
  return (
    <>
      <p>
        {countingName(question.counting)},{" "}
        {question.from === undefined ? `up to ${last}` : `${formatPlainDay(dayFromNumber(question.from))} to ${last}`}.
        {fleet.kind === "rate" &&
          ` ${formatCount(fleet.estimate.events)} in ${formatCount(fleet.estimate.n)} unit-years of ${formatCounted(fleet.units, "unit")}.`}
      </p>
      <p>
        If we could rerun this many times, ranges built this way would hold the true rate{" "}
        {Math.round(100 * question.level)} times in 100. <Link href="/shop/how-we-count">How we count</Link>
      </p>
      {leftOut.length > 0 && (
        <div>
          <p>Not counted:</p>
          <ul>
            {leftOut.map(({ reason, jobs }) => (
              <li key={reason}>
                {formatCounted(jobs, "job")}: {reason}
              </li>
            ))}
          </ul>
        </div>
      )}
      {unplacedUnits > 0 && (
        <p>
          {formatCounted(unplacedUnits, "unit carries", "units carry")} no exposure: not in the register, or without a
          day of service.
        </p>
      )}
      <p>Units that we have never seen are not counted, and owners tend to call less once nobody else pays.</p>
    </>
  );
}
