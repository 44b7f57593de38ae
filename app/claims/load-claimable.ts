import { judgeWith } from "@/app/_claims/judge-job";
import type { Reader } from "@/db/database-types";
import { loadUnclaimedJobNumbers } from "@/db/queries/claim-list";
import { loadExpectedRanges } from "@/db/queries/expected-ranges";
import { loadJobRecord } from "@/db/queries/job-record";
import { loadAllPolicies, loadPolicies } from "@/db/queries/policies";
import { addDays, type Day } from "@/lib/calendar/day";
import type { Claim } from "@/lib/claims/claim";

export interface ClaimableJob {
  readonly jobNumber: string;
  readonly unitId: string;
  readonly serial: string | undefined;
  readonly component: string | undefined;
  readonly completedOn: Day;
  readonly claim: Claim;
}

/** Covered work that nobody has claimed and that can still be filed, the most urgent first. */
export async function loadClaimable(db: Reader, today: Day): Promise<ClaimableJob[]> {
  const numbers = await loadUnclaimedJobNumbers(db, addDays(today, -(await longestWindowDays(db))));
  const policies = new Map<number, Awaited<ReturnType<typeof loadPolicies>>>();
  const ranges = new Map<number, Awaited<ReturnType<typeof loadExpectedRanges>>>();
  const claimable: ClaimableJob[] = [];
  for (const number of numbers) {
    const stored = await loadJobRecord(db, number);
    if (stored === undefined) continue;
    const known = policies.get(stored.makerId) ?? (await loadPolicies(db, stored.makerId));
    policies.set(stored.makerId, known);
    const expected = ranges.get(stored.modelId) ?? (await loadExpectedRanges(db, stored.modelId));
    ranges.set(stored.modelId, expected);
    const { record } = stored;
    for (const { assembly } of judgeWith(stored, known, expected, today).claims) {
      if (assembly.kind !== "claim") continue;
      claimable.push({
        jobNumber: number,
        unitId: stored.unitId,
        serial: record.unit.serial,
        component: record.job.component,
        completedOn: record.job.completedOn,
        claim: assembly.claim,
      });
    }
  }
  return claimable.sort(
    (a, b) => a.claim.filing.daysLeft - b.claim.filing.daysLeft || a.jobNumber.localeCompare(b.jobNumber, "en"),
  );
}

const daysOf = { day: 1, month: 31, year: 366 } as const;
/** A last day that falls on a weekend may roll to the next working day. */
const longestRollDays = 7;

/** The longest filing window of any policy on file: an older job can only be late. */
async function longestWindowDays(db: Reader): Promise<number> {
  const windows = (await loadAllPolicies(db)).map(({ policy }) => policy.clocks.filing.within);
  return longestRollDays + Math.max(0, ...windows.map(({ n, unit }) => n * daysOf[unit]));
}
