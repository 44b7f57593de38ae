import { sql } from "drizzle-orm";
import type { Reader } from "@/db/database-types";
import { filedLeaks } from "@/lib/claims/leaks/filed-leaks";
import { type LeakFound, totalCents } from "@/lib/claims/leaks/leak";
import { unfiledLeaks } from "@/lib/claims/leaks/unfiled-leaks";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import { jobCoverageFacts } from "@/lib/coverage/job-coverage-facts";
import { policyWithContract } from "@/lib/coverage/policy-with-contract";
import type { JobRecord } from "@/lib/domain/job";
import type { ExpectedRange } from "@/lib/domain/reading";
import { checkEvidence } from "@/lib/evidence/check-evidence";
import { mayBeCovered } from "../../queries/money-candidates";
import { type ClaimOfJob, loadClaimsOfUnits } from "../../queries/money-claims";
import { loadMoneyJobs, type MoneyJob } from "../../queries/money-jobs";
import { type JobKey, loadProof } from "../../queries/money-under";
import { inScope, type UnitScope } from "../../queries/money-units";
import type { StoredPolicy } from "../../queries/policies";

/** What jobs are held against; the same for all of them. */
export interface Yardstick {
  readonly policies: readonly StoredPolicy[];
  /** By model. */
  readonly ranges: ReadonlyMap<number, readonly ExpectedRange[]>;
}

/** A row of unclaimed_work under the names of its columns. */
export type UnclaimedRow = ReturnType<typeof rowOf>;

/** Covered work without its pay on these units, as rows to be stored. */
export async function judgeUnclaimed(
  db: Reader,
  scope: UnitScope,
  { policies, ranges }: Yardstick,
  options: { readonly everyJob?: boolean } = {},
): Promise<UnclaimedRow[]> {
  const claims = await loadClaimsOfUnits(db, scope, policies);
  const keys = await loadCandidates(db, scope, policies, options);
  const covered = coveredJobs(await loadMoneyJobs(db, keys), policies);
  const proof = await loadProof(db, covered);
  const claimsOf = groupedByJob(claims);
  const unfiled = covered.flatMap((job) => {
    const record: JobRecord = { ...job.record, ...proof(job) };
    const taken = claimsOf.get(keyOf(job)) ?? [];
    const open = job.policies
      .filter(({ policyId }) => !taken.some((claim) => claim.policyId === policyId))
      .map(({ policyId, policy }) => ({ policyId, policy: policyWithContract(policy, job.file.contracts) }));
    const evidence = () => checkEvidence(record, ranges.get(job.modelId) ?? []);
    const decision = decideCoverage(jobCoverageFacts(record, job.file), documents(job.policies));
    return unfiledLeaks({ record, decision, evidence, policies: open }).map(({ policyId, found }) =>
      rowOf(job, policyId, job.record.job, found),
    );
  });
  return [...unfiled, ...(await filedRows(db, claims))];
}

/** Closed jobs of these units that may be covered; all of them where the one is to be held against the other. */
async function loadCandidates(
  db: Reader,
  scope: UnitScope,
  policies: readonly StoredPolicy[],
  { everyJob = false }: { readonly everyJob?: boolean },
): Promise<JobKey[]> {
  const makers = await db.rows<{ maker_id: number }>(sql`select maker_id from makers`);
  const may = everyJob
    ? sql`true`
    : mayBeCovered(
        makers.map((row) => row.maker_id),
        policies,
      );
  const rows = await db.rows<{ unit_id: string; job_id: string }>(sql`
    select j.unit_id::text, j.job_id::text from jobs j join units u using (unit_id)
    where ${inScope(sql`j.unit_id`, scope)} and j.status = 'closed' and ${may} order by j.unit_id, j.job_id`);
  return rows.map((row) => ({ unitId: row.unit_id, jobId: row.job_id }));
}

interface CoveredJob extends MoneyJob {
  readonly policies: readonly StoredPolicy[];
}

/** Decided first on what cover looks at, so that photos and readings are read for covered jobs only. */
function coveredJobs(candidates: readonly MoneyJob[], policies: readonly StoredPolicy[]): CoveredJob[] {
  const bearingOn = new Map<number, readonly StoredPolicy[]>();
  return candidates.flatMap((job) => {
    const bearing =
      bearingOn.get(job.makerId) ?? policies.filter(({ makerId }) => makerId === job.makerId || makerId === null);
    bearingOn.set(job.makerId, bearing);
    // A receipt may free a purchase day from doubt, so doubt is kept as well.
    const { verdict } = decideCoverage(
      jobCoverageFacts({ ...job.record, readings: [], attachments: [] }, job.file),
      documents(bearing),
    );
    return verdict === "covered" || verdict === "needs_evidence" ? [{ ...job, policies: bearing }] : [];
  });
}

const documents = (policies: readonly StoredPolicy[]) => policies.map(({ policy }) => policy);

async function filedRows(db: Reader, claims: readonly ClaimOfJob[]): Promise<UnclaimedRow[]> {
  const leaking = claims.flatMap((claim) => {
    const found = claim.filed === undefined ? [] : filedLeaks(claim.filed);
    return found.length === 0 ? [] : [{ claim, found }];
  });
  if (leaking.length === 0) return [];
  const jobs = await loadJobsOfClaims(
    db,
    leaking.map(({ claim }) => claim),
  );
  return leaking.flatMap(({ claim, found }) => {
    const job = jobs.get(keyOf(claim));
    return job === undefined ? [] : found.map((each) => rowOf(claim, claim.policyId, job, each));
  });
}

async function loadJobsOfClaims(db: Reader, claims: readonly ClaimOfJob[]) {
  return new Map((await loadMoneyJobs(db, claims)).map((job) => [keyOf(job), job.record.job]));
}

function groupedByJob(claims: readonly ClaimOfJob[]): ReadonlyMap<string, readonly ClaimOfJob[]> {
  const groups = new Map<string, ClaimOfJob[]>();
  for (const claim of claims) groups.set(keyOf(claim), [...(groups.get(keyOf(claim)) ?? []), claim]);
  return groups;
}

function keyOf({ unitId, jobId }: JobKey): string {
  return `${unitId} ${jobId}`;
}

function rowOf(
  { unitId, jobId }: JobKey,
  policyId: number,
  { component, completedOn }: Pick<JobRecord["job"], "component" | "completedOn">,
  found: LeakFound,
) {
  const { cents } = found;
  return {
    unit_id: unitId,
    job_id: jobId,
    policy_id: policyId,
    leak: found.leak,
    claim_number: found.claimNumber ?? null,
    payer: found.payer,
    component: component ?? null,
    completed_on: completedOn,
    due_on: found.dueOn ?? null,
    currency: found.currency,
    parts_cents: cents.parts,
    labour_cents: cents.labour,
    trip_cents: cents.trip,
    diagnosis_cents: cents.diagnosis,
    handling_cents: cents.handling,
    amount_cents: totalCents(cents),
    missing: found.missing,
    reason: found.reason,
  };
}
