import { todayIn } from "@/app/_clock/today";
import type { Reader } from "@/db/database-types";
import { type ClaimListRow, findClaim } from "@/db/queries/claim-list";
import { loadJobRecord } from "@/db/queries/job-record";
import { loadShop } from "@/db/queries/shop";
import { claimPacket } from "@/lib/claims/claim-packet";
import type { ClaimPacket } from "@/lib/claims/packet";
import { type JudgedClaim, type JudgedJob, judgeJob } from "./judge-job";

export interface OpenClaim {
  readonly row: ClaimListRow;
  readonly judged: JudgedJob;
  readonly claim: JudgedClaim;
  /** Undefined where the job no longer supports the claim; the claim's page says why. */
  readonly packet: ClaimPacket | undefined;
}

/** A draft with its job judged as of today: a draft follows its job until it is sent. */
export async function loadClaim(db: Reader, claimNumber: string): Promise<OpenClaim | undefined> {
  const row = await findClaim(db, claimNumber);
  const stored = row && (await loadJobRecord(db, row.jobNumber));
  if (row === undefined || stored === undefined) return undefined;
  const shop = await loadShop(db);
  const judged = await judgeJob(db, stored, todayIn(shop.timeZone));
  const claim = judged.claims.find(({ policyId }) => policyId === row.policyId) ?? judged.claims[0];
  if (claim === undefined) return undefined;
  const { assembly, given } = claim;
  const reference = { claimNumber: row.claimNumber, servicer: shop.name };
  const packet = assembly.kind === "claim" ? claimPacket(given, assembly.claim, judged.ranges, reference) : undefined;
  return { row, judged, claim, packet };
}
