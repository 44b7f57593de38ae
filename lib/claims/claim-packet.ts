import { describeCoverage } from "@/lib/coverage/describe-coverage";
import { causes } from "@/lib/domain/cause";
import { componentOf } from "@/lib/domain/components";
import { failureModeOf } from "@/lib/domain/failure-modes";
import { type Attachment, type JobRecord, photoSubjects } from "@/lib/domain/job";
import type { ExpectedRange } from "@/lib/domain/reading";
import { symptomOf } from "@/lib/domain/symptoms";
import type { Claim } from "./claim";
import type { ClaimCase } from "./claim-case";
import {
  type ClaimPacket,
  type PacketEarlierJob,
  type PacketFile,
  type PacketSection,
  type PacketStory,
  type SectionKey,
  sectionTitles,
} from "./packet";
import { type PacketReference, packetCover } from "./packet-cover";
import { packetReadings } from "./packet-readings";

/**
 * Everything a payer is shown for one claim. What is missing is said, never left out.
 * @param ranges expected ranges of the unit's model, the same that the evidence check was given
 */
export function claimPacket(
  given: ClaimCase,
  claim: Claim,
  ranges: readonly ExpectedRange[],
  reference: PacketReference,
): ClaimPacket {
  const { record, decision, evidence } = given;
  const files = record.attachments.map(packetFile);
  const photos = files.filter((file) => file.mediaType.startsWith("image/"));
  const documents = files.filter((file) => !file.mediaType.startsWith("image/"));
  const readings = packetReadings(record, ranges);
  const { currency, lines, deductions, totalCents } = claim;
  const history = record.earlier.map(packetEarlierJob);
  const manifest = [...photos, ...documents].map(({ name, bytes, sha256 }) => ({ name, bytes, sha256 }));
  return {
    cover: packetCover(given, claim, reference),
    index: sections({
      coverage: 1,
      story: 1,
      readings: readings.length,
      money: lines.length,
      photos: photos.length,
      documents: documents.length,
      history: history.length,
      manifest: manifest.length,
    }),
    coverage: describeCoverage(decision),
    story: packetStory(record),
    evidence: { kind: evidence.kind, entryId: evidence.entryId, items: evidence.items, verdict: evidence.verdict },
    readings,
    faultCodes: readings.flatMap(({ number, outcome }) =>
      outcome.kind === "code" ? [{ reading: number, code: outcome.code }] : [],
    ),
    money: { currency, lines, deductions, totalCents },
    photos,
    documents,
    history,
    notSupplied: claim.tasks.flatMap((task) => task.fixes.map((fix) => `Not supplied: ${fix}`)),
    warnings: claim.warnings,
    manifest,
  };
}

function sections(entries: Readonly<Record<SectionKey, number>>): readonly PacketSection[] {
  const keys = Object.keys(sectionTitles) as readonly SectionKey[]; // Object.keys loses the key type
  return keys.map((key, index) => ({ number: index + 1, key, title: sectionTitles[key], entries: entries[key] }));
}

/** Names that stay apart when two photos have the same caption. */
function packetFile(attachment: Attachment, index: number): PacketFile {
  const { id, subject, caption, mediaType, bytes, sha256, takenAt } = attachment;
  const ending = mediaType === "image/jpeg" ? "jpg" : "pdf";
  const name = `${String(index + 1).padStart(2, "0")}-${subject.replaceAll("_", "-")}.${ending}`;
  return { id, name, subject: photoSubjects[subject], caption, mediaType, bytes, sha256, takenAt };
}

function packetStory({ job }: JobRecord): PacketStory {
  const { complaint, causeNote: cause, correction, symptom, component, failureMode } = job;
  return {
    complaint,
    cause,
    correction,
    symptom: symptom && (symptomOf(symptom)?.name ?? symptom),
    component: component && (componentOf(component)?.name ?? component),
    failureMode: failureMode && (failureModeOf(failureMode)?.name ?? failureMode),
    causeName: causes[job.cause].name,
  };
}

function packetEarlierJob({
  jobNumber,
  completedOn,
  component,
  symptom,
  cause,
}: JobRecord["earlier"][number]): PacketEarlierJob {
  return {
    jobNumber,
    completedOn,
    component: component && (componentOf(component)?.name ?? component),
    symptom: symptom && (symptomOf(symptom)?.name ?? symptom),
    causeName: causes[cause].name,
  };
}
