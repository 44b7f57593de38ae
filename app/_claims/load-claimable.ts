import type { Reader } from "@/db/database-types";
import { loadUnclaimedJobNumbers } from "@/db/queries/claim-list";
import { loadAllExpectedRanges } from "@/db/queries/expected-ranges";
import { loadJobRecords, type StoredJob } from "@/db/queries/job-record";
import { loadAllPolicies, type StoredPolicy } from "@/db/queries/policies";
import { addDays, type Day } from "@/lib/calendar/day";
import type { Claim } from "@/lib/claims/claim";
import { judgeWith } from "./judge-job";

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
  const known = await loadAllPolicies(db);
  const numbers = await loadUnclaimedJobNumbers(db, addDays(today, -longestWindowDays(known)));
  const ranges = await loadAllExpectedRanges(db);
  const claimable = (await loadJobRecords(db, numbers)).flatMap((stored) => {
    const bearing = known.filter(({ makerId }) => makerId === stored.makerId || makerId === null);
    return judgeWith(stored, bearing, ranges.get(stored.modelId) ?? [], today).claims.flatMap(({ assembly }) =>
      assembly.kind === "claim" ? [claimableJob(stored, assembly.claim)] : [],
    );
  });
  return claimable.sort(
    (a, b) => a.claim.filing.daysLeft - b.claim.filing.daysLeft || a.jobNumber.localeCompare(b.jobNumber, "en"),
  );
}

const daysOf = { day: 1, month: 31, year: 366 } as const;
/** A last day that falls on a weekend may roll to the next working day. */
const longestRollDays = 7;

/** The longest filing window of any policy on file: an older job can only be late. */
function longestWindowDays(known: readonly StoredPolicy[]): number {
  const windows = known.map(({ policy }) => policy.clocks.filing.within);
  return longestRollDays + Math.max(0, ...windows.map(({ n, unit }) => n * daysOf[unit]));
}

function claimableJob({ unitId, record: { job, unit } }: StoredJob, claim: Claim): ClaimableJob {
  const { jobNumber, component, completedOn } = job;
  return { jobNumber, unitId, serial: unit.serial, component, completedOn, claim };
}
