import type { Reader } from "../database-types";
import { loadCandidates } from "./money-candidates";
import { type ClaimOfJob, loadClaimsOfUnits } from "./money-claims";
import { completeJobs, loadMoneyJobs, type MoneyJob } from "./money-jobs";
import { type JobKey, keyOf } from "./money-under";
import type { UnitScope } from "./money-units";
import type { StoredPolicy } from "./policies";

/** Everything that says what some units were not paid. */
export interface MoneyCases {
  /** Closed jobs that may be covered. */
  readonly jobs: readonly MoneyJob[];
  /** Claims of these units that were not withdrawn. */
  readonly claims: readonly ClaimOfJob[];
  /** The jobs of those claims, some of which are not in `jobs`. */
  readonly jobOfClaim: (claim: JobKey) => MoneyJob | undefined;
}

/** The jobs of so few units are sooner judged than it is planned how to leave some of them out. */
const fewUnits = 50;

/** @param everyJob  every closed job, where what is left out is to be held against the rest */
export async function loadMoneyCases(
  db: Reader,
  scope: UnitScope,
  policies: readonly StoredPolicy[],
  { everyJob = false }: { readonly everyJob?: boolean } = {},
): Promise<MoneyCases> {
  const claims = await loadClaimsOfUnits(db, scope, policies);
  const isSpared = everyJob || (scope.kind === "units" && scope.unitIds.length <= fewUnits);
  const jobs = await completeJobs(db, await loadCandidates(db, scope, isSpared ? undefined : policies), scope);
  if (claims.length === 0) return { jobs, claims, jobOfClaim: () => undefined };
  const found = new Map(jobs.map((job) => [keyOf(job), job]));
  const others = claims.filter((claim) => claim.filed !== undefined && !found.has(keyOf(claim)));
  for (const job of await loadMoneyJobs(db, others)) found.set(keyOf(job), job);
  return { jobs, claims, jobOfClaim: (claim) => found.get(keyOf(claim)) };
}
