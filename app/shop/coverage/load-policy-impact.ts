import { judgeWith } from "@/app/_claims/judge-job";
import type { Reader } from "@/db/database-types";
import { loadClaimList, loadUnclaimedJobNumbers } from "@/db/queries/claim-list";
import { loadAllExpectedRanges } from "@/db/queries/expected-ranges";
import { loadJobRecords, type StoredJob } from "@/db/queries/job-record";
import { loadAllPolicies, type StoredPolicy } from "@/db/queries/policies";
import { addDays, type Day } from "@/lib/calendar/day";
import { type ChangedItem, changedItems } from "@/lib/coverage/changed-items";
import type { VersionPlace } from "@/lib/coverage/place-version";
import type { Currency } from "@/lib/domain/money";
import { normalised } from "@/lib/domain/normalised";
import type { Policy } from "@/lib/domain/policy";

export interface AlteredDecision {
  readonly jobNumber: string;
  readonly completedOn: Day;
  /** Number of the draft claim; undefined where nobody has claimed the job. */
  readonly claimNumber: string | undefined;
  readonly changed: readonly ChangedItem[];
  readonly beforeCents: number;
  readonly afterCents: number;
  readonly currency: Currency;
}

export interface PolicyImpact {
  readonly since: Day;
  readonly jobs: number;
  readonly drafts: number;
  readonly altered: readonly AlteredDecision[];
}

const jobsAtOnce = 500;
const daysOf = { day: 1, month: 31, year: 366 } as const;

/** Every open decision, drafts and jobs that nobody has claimed and could still file, before and after the new version. */
export async function loadPolicyImpact(
  db: Reader,
  { policy, place, today }: { readonly policy: Policy; readonly place: VersionPlace; readonly today: Day },
): Promise<PolicyImpact> {
  const before = await loadAllPolicies(db);
  const after = withVersion(before, policy, place);
  const since = addDays(today, -longestWindowDays([...before.map((stored) => stored.policy), policy]));
  const drafts = await loadClaimList(db, { states: ["draft"] }, { offset: 0, limit: 100_000 });
  const unclaimed = await loadUnclaimedJobNumbers(db, since);
  const claimOf = new Map(drafts.map(({ jobNumber, claimNumber }) => [jobNumber, claimNumber]));
  const numbers = [...new Set([...claimOf.keys(), ...unclaimed])];
  const ranges = await loadAllExpectedRanges(db);
  const altered: AlteredDecision[] = [];
  for (let at = 0; at < numbers.length; at += jobsAtOnce) {
    for (const stored of await loadJobRecords(db, numbers.slice(at, at + jobsAtOnce))) {
      if (!concerns(policy, stored)) continue;
      const judge = (policies: readonly StoredPolicy[]) =>
        judgeWith(stored, bearingOn(policies, stored), ranges.get(stored.modelId) ?? [], today);
      const one = alteredDecision(
        judge(before),
        judge(after),
        claimOf.get(stored.record.job.jobNumber),
        policy.currency,
      );
      if (one !== undefined) altered.push(one);
    }
  }
  altered.sort((a, b) => Math.abs(b.afterCents - b.beforeCents) - Math.abs(a.afterCents - a.beforeCents));
  return { since, jobs: unclaimed.length, drafts: drafts.length, altered };
}

/** The policies as they would stand once the new version is published. */
function withVersion(before: readonly StoredPolicy[], policy: Policy, place: VersionPlace): readonly StoredPolicy[] {
  const kept = before.map((stored): StoredPolicy => {
    const isClosed =
      place.kind === "closes" && stored.policy.key === policy.key && stored.policy.version === place.version;
    return isClosed ? { ...stored, policy: { ...stored.policy, effectiveTo: place.on } } : stored;
  });
  return [...kept, { policyId: 0, makerId: null, policy }];
}

function bearingOn(policies: readonly StoredPolicy[], { makerId }: StoredJob): readonly StoredPolicy[] {
  return policies.filter((stored) => stored.makerId === makerId || stored.makerId === null);
}

function concerns({ maker }: Policy, { record }: StoredJob): boolean {
  return maker === undefined || normalised(maker) === normalised(record.unit.maker);
}

type Judged = ReturnType<typeof judgeWith>;

function alteredDecision(
  before: Judged,
  after: Judged,
  claimNumber: string | undefined,
  currency: Currency,
): AlteredDecision | undefined {
  const changed = changedItems(before.decision, after.decision);
  const [beforeCents, afterCents] = [askedCents(before), askedCents(after)];
  if (changed.length === 0 && beforeCents === afterCents) return undefined;
  const { jobNumber, completedOn } = before.stored.record.job;
  return { jobNumber, completedOn, claimNumber, changed, beforeCents, afterCents, currency };
}

/** What could be asked for the job, over all who pay. */
function askedCents({ claims }: Judged): number {
  return claims.reduce((sum, { assembly }) => sum + (assembly.kind === "claim" ? assembly.claim.totalCents : 0), 0);
}

function longestWindowDays(policies: readonly Policy[]): number {
  const rollDays = 7;
  return (
    rollDays + Math.max(0, ...policies.map(({ clocks: { filing } }) => filing.within.n * daysOf[filing.within.unit]))
  );
}
