import { todayIn } from "@/app/_clock/today";
import type { Reader } from "@/db/database-types";
import { type ClaimListRow, loadClaimsOfJob } from "@/db/queries/claim-list";
import { loadExpectedRanges } from "@/db/queries/expected-ranges";
import { loadJobRecord, type StoredJob } from "@/db/queries/job-record";
import { loadPolicies, type StoredPolicy } from "@/db/queries/policies";
import { loadShop } from "@/db/queries/shop";
import type { Day } from "@/lib/calendar/day";
import { assembleClaim } from "@/lib/claims/assemble-claim";
import type { ClaimAssembly } from "@/lib/claims/claim";
import { type ClaimCase, coveredByPolicy } from "@/lib/claims/claim-case";
import type { CoverageDecision } from "@/lib/coverage/coverage-decision";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import { jobCoverageFacts } from "@/lib/coverage/job-coverage-facts";
import { policyWithContract } from "@/lib/coverage/policy-with-contract";
import type { ExpectedRange } from "@/lib/domain/reading";
import { checkEvidence } from "@/lib/evidence/check-evidence";
import type { EvidenceCheck } from "@/lib/evidence/evidence-check";

/** Everything that is judged about one job: who pays, what proves it, and the claim that follows. */
export interface JudgedJob {
  readonly stored: StoredJob;
  readonly ranges: readonly ExpectedRange[];
  readonly decision: CoverageDecision;
  readonly evidence: EvidenceCheck;
  /** One for each policy version that covers a pay item; where none does, the one for the first policy says why. */
  readonly claims: readonly JudgedClaim[];
}

export interface JudgedClaim {
  readonly policyId: number;
  readonly given: ClaimCase;
  readonly assembly: ClaimAssembly;
}

/** A job by its number, judged as of today in the shop's zone, with the drafts that were made from it. */
export async function loadJudgedJob(
  db: Reader,
  jobNumber: string,
): Promise<
  { readonly judged: JudgedJob; readonly drafts: readonly ClaimListRow[]; readonly timeZone: string } | undefined
> {
  const stored = await loadJobRecord(db, jobNumber);
  if (stored === undefined) return undefined;
  const { timeZone } = await loadShop(db);
  const judged = await judgeJob(db, stored, todayIn(timeZone));
  return { judged, drafts: await loadClaimsOfJob(db, jobNumber), timeZone };
}

export async function judgeJob(db: Reader, stored: StoredJob, asOf: Day): Promise<JudgedJob> {
  const policies = await loadPolicies(db, stored.makerId);
  return judgeWith(stored, policies, await loadExpectedRanges(db, stored.modelId), asOf);
}

export function judgeWith(
  stored: StoredJob,
  policies: readonly StoredPolicy[],
  ranges: readonly ExpectedRange[],
  asOf: Day,
): JudgedJob {
  const { record } = stored;
  const decision = decideCoverage(
    jobCoverageFacts(record, stored.file),
    policies.map(({ policy }) => policy),
  );
  const evidence = checkEvidence(record, ranges);
  const cases = policies.map(({ policyId, policy }) => ({
    policyId,
    given: {
      record,
      decision,
      evidence,
      policy: policyWithContract(policy, stored.file.contracts, record.job.jobNumber),
      asOf,
      holidays: new Set<Day>(),
    },
  }));
  const paying = cases.filter(({ given }) => coveredByPolicy(given).items.length > 0);
  const asked = paying.length > 0 ? paying : deciding(cases, decision);
  return {
    stored,
    ranges,
    decision,
    evidence,
    claims: asked.map(({ policyId, given }) => ({ policyId, given, assembly: assembleClaim(given) })),
  };
}

/** Where nobody pays: the version whose terms gave the answer, else the maker's latest. */
function deciding<Case extends { readonly given: ClaimCase }>(
  cases: readonly Case[],
  { items: { parts } }: CoverageDecision,
): readonly Case[] {
  const by = "by" in parts ? parts.by : undefined;
  const named = cases.filter(({ given: { policy } }) => policy.key === by?.policy && policy.version === by.version);
  return named.length > 0 ? named : cases.filter(({ given }) => given.policy.maker !== undefined).slice(-1);
}
