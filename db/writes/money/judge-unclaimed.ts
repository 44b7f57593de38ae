import { coversAnything } from "@/lib/claims/claim-case";
import { filedLeaks } from "@/lib/claims/leaks/filed-leaks";
import { type LeakFound, totalCents } from "@/lib/claims/leaks/leak";
import { unfiledLeaks } from "@/lib/claims/leaks/unfiled-leaks";
import { answerCoverage } from "@/lib/coverage/decide-coverage";
import { jobCoverageFacts } from "@/lib/coverage/job-coverage-facts";
import { policyWithContract } from "@/lib/coverage/policy-with-contract";
import type { JobRecord } from "@/lib/domain/job";
import type { Policy } from "@/lib/domain/policy";
import type { ExpectedRange } from "@/lib/domain/reading";
import type { EvidenceCheck } from "@/lib/evidence/evidence-check";
import type { MoneyCases } from "../../queries/money-cases";
import type { ClaimOfJob } from "../../queries/money-claims";
import type { MoneyJob } from "../../queries/money-jobs";
import { type JobKey, keyOf } from "../../queries/money-under";
import type { StoredPolicy } from "../../queries/policies";

/** What jobs are held against; the same for all of them. */
export interface Yardstick {
  readonly policies: readonly StoredPolicy[];
  /** By model. */
  readonly ranges: ReadonlyMap<number, readonly ExpectedRange[]>;
  readonly checkEvidence: (record: JobRecord, ranges: readonly ExpectedRange[]) => EvidenceCheck;
}

/** A row of unclaimed_work under the names of its columns. */
export type UnclaimedRow = ReturnType<typeof rowOf>;

/** Covered work without its pay, as rows to be stored. */
export function judgeUnclaimed(cases: MoneyCases, yardstick: Yardstick): UnclaimedRow[] {
  const claimsOf = groupedByJob(cases.claims);
  const bearingOn = bearingPolicies(yardstick.policies);
  const rows: UnclaimedRow[] = [];
  for (const job of cases.jobs) {
    const taken = claimsOf.size === 0 ? noClaims : (claimsOf.get(keyOf(job)) ?? noClaims);
    rows.push(...unfiledRows(job, bearingOn(job.makerId), taken, yardstick));
  }
  for (const claim of cases.claims) rows.push(...filedRows(claim, cases.jobOfClaim(claim)));
  return rows;
}

const noClaims: readonly ClaimOfJob[] = [];
const noRanges: readonly ExpectedRange[] = [];

interface Bearing {
  readonly stored: readonly StoredPolicy[];
  readonly documents: readonly Policy[];
}

/** The versions that can bear on a maker's units, looked up once for each maker. */
function bearingPolicies(policies: readonly StoredPolicy[]): (makerId: number) => Bearing {
  const known = new Map<number, Bearing>();
  return (makerId) => {
    const found = known.get(makerId);
    if (found !== undefined) return found;
    const stored = policies.filter((each) => each.makerId === makerId || each.makerId === null);
    const bearing = { stored, documents: stored.map(({ policy }) => policy) };
    known.set(makerId, bearing);
    return bearing;
  };
}

function unfiledRows(
  job: MoneyJob,
  { stored, documents }: Bearing,
  taken: readonly ClaimOfJob[],
  { ranges, checkEvidence }: Yardstick,
): readonly UnclaimedRow[] {
  const { record, file } = job;
  const decision = answerCoverage(jobCoverageFacts(record, file), documents);
  if (decision.verdict !== "covered") return [];
  const policies = stored
    .filter(({ policyId, policy }) => coversAnything(decision, policy) && !isTaken(taken, policyId))
    .map(({ policyId, policy }) => ({ policyId, policy: policyWithContract(policy, file.contracts) }));
  let checked: EvidenceCheck | undefined; // once for all payers of the job
  const evidence = () => {
    checked ??= checkEvidence(record, ranges.get(job.modelId) ?? noRanges);
    return checked;
  };
  return unfiledLeaks({ record, decision, evidence, policies }).map(({ policyId, found }) =>
    rowOf(job, policyId, record.job, found),
  );
}

function isTaken(taken: readonly ClaimOfJob[], policyId: number): boolean {
  return taken.some((claim) => claim.policyId === policyId);
}

function filedRows(claim: ClaimOfJob, job: MoneyJob | undefined): readonly UnclaimedRow[] {
  if (claim.filed === undefined || job === undefined) return [];
  return filedLeaks(claim.filed).map((found) => rowOf(claim, claim.policyId, job.record.job, found));
}

function groupedByJob(claims: readonly ClaimOfJob[]): ReadonlyMap<string, readonly ClaimOfJob[]> {
  const groups = new Map<string, ClaimOfJob[]>();
  for (const claim of claims) groups.set(keyOf(claim), [...(groups.get(keyOf(claim)) ?? []), claim]);
  return groups;
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
