import { todayIn } from "@/app/_clock/today";
import type { Reader } from "@/db/database-types";
import { type ClaimLife, loadClaimLife, loadSentBytes } from "@/db/queries/claim-life";
import { type ClaimListRow, findClaim } from "@/db/queries/claim-list";
import { loadFilingFacts } from "@/db/queries/filing-facts";
import { loadJobRecord } from "@/db/queries/job-record";
import { loadAllPolicies } from "@/db/queries/policies";
import { loadShop } from "@/db/queries/shop";
import { type Day, earlierOf } from "@/lib/calendar/day";
import type { FilingCheck, FilingClockNow } from "@/lib/claims/checks/filing-case";
import type { Claim } from "@/lib/claims/claim";
import { claimPacket } from "@/lib/claims/claim-packet";
import { filingChecks } from "@/lib/claims/filing-checks";
import { changedSinceSent } from "@/lib/claims/life/changed-since-sent";
import { type ClaimStanding, claimStanding } from "@/lib/claims/life/claim-standing";
import { type ClaimDeadlines, claimDeadlines } from "@/lib/claims/life/judge-act";
import { readSentText } from "@/lib/claims/life/sent-content";
import type { ClaimPacket } from "@/lib/claims/packet";
import { filingDeadline } from "@/lib/coverage/decide-filing";
import type { Policy } from "@/lib/domain/policy";
import { type JudgedClaim, type JudgedJob, judgeJob } from "./judge-job";

export interface OpenClaim {
  readonly row: ClaimListRow;
  readonly today: Day;
  readonly judged: JudgedJob;
  readonly claim: JudgedClaim;
  readonly policy: Policy;
  /** Undefined where the job no longer supports the claim; the claim's page says why. */
  readonly packet: ClaimPacket | undefined;
  readonly life: ClaimLife;
  readonly standing: ClaimStanding;
  readonly deadlines: ClaimDeadlines;
  /** What is held against it before it is sent; empty where there is nothing to send. */
  readonly checks: readonly FilingCheck[];
  /** Parts of the job that are no longer as they were last sent. */
  readonly changed: readonly string[];
}

/**
 * A claim with its life, and its job judged as it stands now: a draft follows its job, and what was sent stays as it was.
 * Once the filing window is over it is judged as of its last day, so that the clock is one of the checks and doesn't
 * hide what the others say.
 */
export async function loadClaim(db: Reader, claimNumber: string, asOf?: Day): Promise<OpenClaim | undefined> {
  const row = await findClaim(db, claimNumber);
  const stored = row && (await loadJobRecord(db, row.jobNumber));
  const life = row && (await loadClaimLife(db, claimNumber));
  const policy = row && (await loadAllPolicies(db)).find(({ policyId }) => policyId === row.policyId)?.policy;
  if (row === undefined || stored === undefined || life === undefined || policy === undefined) return undefined;
  const shop = await loadShop(db);
  const today = asOf ?? todayIn(shop.timeZone);
  const lastDay = filingDeadline(policy.clocks.filing, row.completedOn, new Set());
  const judged = await judgeJob(db, stored, earlierOf(today, lastDay));
  const claim = judged.claims.find(({ policyId }) => policyId === row.policyId) ?? judged.claims[0];
  if (claim === undefined) return undefined;
  const { assembly, given } = claim;
  const standing = claimStanding(life.events);
  const deadlines = claimDeadlines(standing, policy.clocks);
  const found = { row, today, judged, claim, policy, life, standing, deadlines };
  if (assembly.kind === "blocked") return { ...found, packet: undefined, checks: [], changed: [] };
  const reference = { claimNumber, servicer: shop.name, timeZone: shop.timeZone };
  const made = claimPacket(given, assembly.claim, judged.ranges, reference);
  const packet = { ...made, cover: { ...made.cover, preparedOn: today } };
  const facts = await loadFilingFacts(db, stored, claimNumber);
  const clock = clockOf(standing, deadlines);
  const checks = filingChecks({ given, file: stored.file, claim: assembly.claim, today, clock, ...facts });
  return { ...found, packet, checks, changed: await changedOf(db, row, packet) };
}

/** The claim as it would be sent today, or undefined. */
export function claimOf({ claim: { assembly } }: Pick<OpenClaim, "claim">): Claim | undefined {
  return assembly.kind === "claim" ? assembly.claim : undefined;
}

function clockOf({ filings }: ClaimStanding, { resubmitBy, mayFileAgain }: ClaimDeadlines): FilingClockNow {
  return filings === 0 ? { kind: "first" } : { kind: "again", resubmitBy, mayFileAgain };
}

async function changedOf(db: Reader, { claimNumber, filings }: ClaimListRow, now: ClaimPacket) {
  if (filings === 0) return [];
  const sent = await loadSentBytes(db, claimNumber, filings);
  return sent === undefined ? [] : changedSinceSent(readSentText(sent.content.toString("utf8")).packet, now);
}
