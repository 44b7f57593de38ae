import { instantInUtc } from "@/lib/calendar/instant";
import { causes } from "@/lib/domain/cause";
import { componentOf } from "@/lib/domain/components";
import { failureModeOf } from "@/lib/domain/failure-modes";
import { type Attachment, type PartLine, photoSubjects } from "@/lib/domain/job";
import type { Currency } from "@/lib/domain/money";
import { symptomOf } from "@/lib/domain/symptoms";
import type { EvidencePlace } from "@/lib/evidence/evidence-check";
import type { Claim } from "../claim";
import type { ClaimCase } from "../claim-case";
import type { ClaimPacket, PacketReading } from "../packet";
import { type NeutralClaim, neutralClaimVersion } from "./neutral-claim-document";
import { neutralMeasurement } from "./neutral-measurement";

interface Parts {
  readonly given: ClaimCase;
  readonly claim: Claim;
  readonly packet: ClaimPacket;
}

/**
 * The whole claim for other programs, and the content that is locked when it is sent: `canonicalJson` makes its text.
 * Checked: tests/claims/neutral/neutral-claim.test.ts and tests/db/packet-of-demo.test.ts, by another validator.
 */
export function neutralClaim(parts: Parts): NeutralClaim {
  const { packet, given } = parts;
  const { job, earlier, attachments } = given.record;
  return {
    schema: neutralClaimVersion,
    header: header(parts),
    unit: unit(given),
    problem: {
      complaint: job.complaint,
      symptom: coded(job.symptom, symptomOf),
      requestedOn: job.requestedOn ?? null,
    },
    findings: findings(parts),
    action: {
      correction: job.correction,
      firstVisitOn: job.firstVisitOn ?? null,
      diagnosedOn: job.diagnosedOn ?? null,
      partsOrderedOn: job.partsOrderedOn ?? null,
      partsReceivedOn: job.partsReceivedOn ?? null,
      completedOn: job.completedOn,
      visits: job.visits,
      labourMinutes: job.labourMinutes ?? null,
    },
    parts: given.record.partLines.filter(({ role }) => role === "fitted").map(part),
    money: money(packet),
    coverage: coverage(parts),
    earlierJobs: earlier.map(({ jobNumber, completedOn, symptom, component, cause }) => ({
      jobNumber,
      completedOn,
      symptom: coded(symptom, symptomOf),
      component: coded(component, componentOf),
      cause: { key: cause, name: causes[cause].name },
    })),
    attachments: [...packet.photos, ...packet.documents].map((file) => attachment(file, attachments)),
    notSupplied: [...packet.notSupplied],
  };
}

function header({ given, claim, packet: { cover } }: Parts): NeutralClaim["header"] {
  const { policy, record } = given;
  const { campaign, campaignName, payerKind, payerName } = claim.source;
  const { authorizationNumber, authorizedOn } = record.job;
  return {
    claimNumber: cover.claimNumber ?? null,
    jobNumber: cover.jobNumber,
    preparedOn: cover.preparedOn,
    servicer: cover.servicer,
    payer: { kind: payerKind, name: payerName },
    policy: { key: policy.key, name: policy.name, version: policy.version, source: policy.sourceDocument },
    campaign: campaign === undefined ? null : { key: campaign, name: campaignName ?? campaign },
    authorization: authorizationNumber === undefined ? null : { number: authorizationNumber, on: authorizedOn ?? null },
    fileBy: { lastDay: claim.filing.lastDay, counted: claim.filing.by },
  };
}

function unit({ record }: ClaimCase): NeutralClaim["unit"] {
  const { unit: of } = record;
  const { madeFrom, madeUntil } = of;
  return {
    maker: of.maker,
    model: of.model,
    productType: of.productType,
    serial: of.serial ?? null,
    use: of.use,
    territory: of.territory ?? null,
    ownerNumber: of.ownerNumber,
    made: madeFrom === undefined || madeUntil === undefined ? null : { from: madeFrom, until: madeUntil },
    shippedOn: of.shippedOn ?? null,
    soldOn: of.soldOn ?? null,
    deliveredOn: of.deliveredOn ?? null,
    installedOn: of.installedOn ?? null,
    occupiedOn: of.occupiedOn ?? null,
    registeredOn: of.registeredOn ?? null,
  };
}

function findings({ given, packet }: Parts): NeutralClaim["findings"] {
  const { job, readings } = given.record;
  const judged = new Map<number, PacketReading>(packet.readings.map((reading) => [reading.number, reading]));
  const names = new Map([...packet.photos, ...packet.documents].map(({ id, name }) => [id, name]));
  const { kind, entryId, items, verdict } = packet.evidence;
  return {
    cause: { key: job.cause, name: causes[job.cause].name },
    component: coded(job.component, componentOf),
    failureMode: coded(job.failureMode, failureModeOf),
    causeNote: job.causeNote,
    measurements: readings.flatMap((reading) => {
      const of = judged.get(reading.number);
      return of === undefined ? [] : [neutralMeasurement(reading, of)];
    }),
    evidence: {
      kind,
      rule: entryId ?? null,
      items: items.map(({ key, label, state, foundIn }) => ({
        key,
        label,
        state,
        foundIn: foundIn.map((place) => placeOf(place, names)),
      })),
      verdict,
    },
  };
}

function placeOf(place: EvidencePlace, names: ReadonlyMap<string, string>) {
  switch (place.kind) {
    case "reading":
      return { kind: "measurement", number: place.number } as const;
    case "attachment":
      return { kind: "attachment", name: names.get(place.id) ?? place.id } as const;
    case "part_line":
      return { kind: "part", line: place.line } as const;
    case "job":
      return { kind: "header", property: place.field === "cause" ? "cause" : "authorization" } as const;
  }
}

function part(line: PartLine): NeutralClaim["parts"][number] {
  return {
    line: line.line,
    partNumber: line.partNumber,
    description: line.description,
    component: coded(line.component, componentOf),
    quantity: line.quantity,
    unitCost: { ...line.unitCost },
    distributor: line.distributor ?? null,
    invoiceNumber: line.invoiceNumber ?? null,
    invoiceLine: line.invoiceLine ?? null,
    invoicedOn: line.invoicedOn ?? null,
  };
}

function money({ money: { currency, lines, deductions, totalCents } }: ClaimPacket): NeutralClaim["money"] {
  const amount = (cents: number): { cents: number; currency: Currency } => ({ cents, currency });
  return {
    lines: lines.map((line, index) => ({
      line: index + 1,
      item: line.item,
      description: line.description,
      quantity: line.quantity,
      amount: amount(line.cents),
      basis: line.basis,
      partNumber: line.partNumber ?? null,
      invoiceNumber: line.invoiceNumber ?? null,
      invoiceLine: line.invoiceLine ?? null,
    })),
    deductions: deductions.map(({ kind, cents, basis }) => ({ kind, amount: amount(cents), basis })),
    total: amount(totalCents),
  };
}

function coverage({ given: { decision }, packet }: Parts): NeutralClaim["coverage"] {
  const { items, arithmetic, boundary, others, statutory, defer } = packet.coverage;
  return {
    items: items.map(({ item, sentence }) => ({ item, verdict: decision.items[item].verdict, sentence })),
    decided: decision.decisive === undefined ? null : { ...decision.decisive },
    arithmetic: [...arithmetic],
    notes: [...boundary, ...others, ...statutory, defer],
  };
}

function attachment(
  file: ClaimPacket["photos"][number],
  attachments: readonly Attachment[],
): NeutralClaim["attachments"][number] {
  const stored = attachments.find(({ id }) => id === file.id);
  if (stored === undefined) throw new RangeError(`packet: file ${file.name} is not one of the job's`);
  const { subject, caption, mediaType, bytes, sha256, takenAt } = stored;
  const about = { key: subject, name: photoSubjects[subject] };
  return {
    name: file.name,
    subject: about,
    caption,
    mediaType,
    bytes,
    sha256,
    takenAt: takenAt === undefined ? null : instantInUtc(takenAt),
  };
}

function coded(key: string | undefined, nameOf: (key: string) => { readonly name: string } | undefined) {
  return key === undefined ? null : { key, name: nameOf(key)?.name ?? key };
}
