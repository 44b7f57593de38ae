import type { Day } from "@/lib/calendar/day";
import type { JobRecord } from "@/lib/domain/job";
import { productTypes } from "@/lib/domain/product-type";
import type { Claim } from "./claim";
import type { ClaimCase } from "./claim-case";
import type { PacketCover } from "./packet";

export interface PacketReference {
  readonly claimNumber: string | undefined;
  readonly servicer: string;
  /** IANA name of the shop's zone; UTC where it is left out. */
  readonly timeZone?: string;
}

/** The first page: who asks whom for what, on which unit, by which day. */
export function packetCover(
  { record, policy, asOf }: ClaimCase,
  claim: Claim,
  reference: PacketReference,
): PacketCover {
  const { unit, job } = record;
  return {
    timeZone: "UTC",
    ...reference,
    payer: claim.source.payerName,
    policy: policy.name,
    policyVersion: policy.version,
    policySource: policy.sourceDocument,
    campaign: policy.campaigns.find((campaign) => campaign.key === claim.source.campaign)?.name,
    authorizationNumber: job.authorizationNumber,
    maker: unit.maker,
    model: unit.model,
    productType: productTypes[unit.productType],
    serial: unit.serial,
    jobNumber: job.jobNumber,
    preparedOn: asOf,
    filing: claim.filing,
    dates: knownDates(record),
  };
}

function knownDates({ unit, job }: JobRecord): PacketCover["dates"] {
  const dates: readonly (readonly [string, Day | undefined])[] = [
    ["Bought", unit.soldOn],
    ["Delivered", unit.deliveredOn],
    ["Installed", unit.installedOn],
    ["Occupied", unit.occupiedOn],
    ["Registered", unit.registeredOn],
    ["Service requested", job.requestedOn],
    ["First visit", job.firstVisitOn],
    ["Diagnosed", job.diagnosedOn],
    ["Parts ordered", job.partsOrderedOn],
    ["Parts received", job.partsReceivedOn],
    ["Completed", job.completedOn],
    ["Authorized", job.authorizedOn],
  ];
  return dates.flatMap(([label, on]) => (on === undefined ? [] : [{ label, on }]));
}
