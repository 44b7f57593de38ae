import { addDays, type Day, laterOf } from "@/lib/calendar/day";
import { isOnOrBefore, type LastDay } from "@/lib/calendar/term";
import type { CoverageFacts, RepairSpan } from "./coverage-facts";

/** Days after a repair within which the buyer may say that it did not help. Source: California Civil Code 1795.6(b). */
export const notRemediedDays = 60;

/**
 * A term does not end while a defect that was repaired under it is still there, if the buyer said so within 60 days of
 * the repair; it runs on, for that defect, until the defect is put right. One repair may follow on another.
 * @param last the last covered day by the terms, with time out for repair added
 * @returns the same day, or the later one on which this job was done
 * Source: California Civil Code 1795.6(b).
 * Checked: tests/coverage/california.test.ts.
 */
export function keptAlive(last: LastDay, facts: CoverageFacts): LastDay {
  if (last === "lifetime" || facts.reported <= last) return last;
  const repairs = facts.outForRepair.filter(({ sameTrouble }) => sameTrouble === true);
  if (repairs.length === 0 || !isHeld(last, repairs, facts.reported)) return last;
  return laterOf(facts.reported, laterOf(facts.firstVisit ?? facts.reported, facts.completed ?? facts.reported));
}

/** Each repair must have begun while the term ran or was kept alive by the one before it. */
function isHeld(last: Day, repairs: readonly RepairSpan[], reported: Day): boolean {
  let until = last;
  let isKept = false;
  for (const { from, until: completed } of [...repairs].sort((a, b) => (a.from < b.from ? -1 : 1))) {
    if (completed > reported || !isOnOrBefore(from, until)) continue;
    const notifiedBy = addDays(completed, notRemediedDays);
    if (notifiedBy > until) until = notifiedBy;
    isKept = true;
  }
  return isKept && reported <= until;
}
