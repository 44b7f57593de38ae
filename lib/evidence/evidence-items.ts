// The list that a claim needs: what every part claim needs, what the entry asks for, the required checks, and the proof.
import type { JobRecord, PhotoSubject } from "@/lib/domain/job";
import { photoSubjects } from "@/lib/domain/job";
import { checkOf } from "./checks";
import { holds } from "./condition";
import type { JudgedReading } from "./current-readings";
import { isDecided } from "./decided";
import type { EvidenceEntry, Need } from "./entry";
import { planOf } from "./entry-plan";
import type { EvidenceItem, EvidencePlace } from "./evidence-check";
import { loggedReadings } from "./reading-log";

export function evidenceItems(
  record: JobRecord,
  entry: EvidenceEntry,
  current: readonly JudgedReading[],
): readonly EvidenceItem[] {
  const { needs, steps } = planOf(entry);
  const items = needs.map((need) => itemOf(need.key, need.text, entry, outcomeOf(record, entry, current, need.need)));
  for (const step of steps) items.push(itemOf(step.key, step.label, entry, stepState(step.checks, current)));
  items.push(proofItem(entry, current));
  return items;
}

/** Field by field: where a great many jobs are judged, a spread here was a tenth of the work. */
function itemOf(key: string, label: string, { mark }: EvidenceEntry, outcome: ItemOutcome): EvidenceItem {
  const { state, foundIn, whatWouldFixIt, canStillBeHad } = outcome;
  return { key, label, state, foundIn, whatWouldFixIt, canStillBeHad, mark };
}

function outcomeOf(
  record: JobRecord,
  entry: EvidenceEntry,
  current: readonly JudgedReading[],
  need: Need,
): ItemOutcome {
  switch (need.kind) {
    case "photo":
    case "photos":
      return photoState(record, need.subjects, need.kind === "photos");
    case "reading":
      return readingState(holds(need.when, current), need.check, current);
    case "reading_log":
      return loggedReadings(entry, current);
    case "part_labels":
      return hasPart(record) ? photoState(record, ["part_labels"], true) : notApplicable;
    case "part_invoice":
      return hasPart(record) ? invoiceState(record, entry) : notApplicable;
    case "authorization":
      return authorizationState(record);
  }
}

type ItemOutcome = Omit<EvidenceItem, "key" | "label" | "mark">;

const notApplicable: ItemOutcome = {
  state: "does_not_apply",
  foundIn: [],
  whatWouldFixIt: "No part was fitted.",
  canStillBeHad: false,
};

function photoState({ attachments }: JobRecord, subjects: readonly PhotoSubject[], all: boolean): ItemOutcome {
  const found = attachments.filter(({ subject }) => subjects.includes(subject));
  const has = (subject: PhotoSubject) => found.some((attachment) => attachment.subject === subject);
  const absent = all ? subjects.filter((subject) => !has(subject)) : found.length > 0 ? [] : subjects;
  const foundIn = absent.length === 0 ? found.map(({ id }): EvidencePlace => ({ kind: "attachment", id })) : [];
  const names = absent.map((subject) => photoSubjects[subject].toLowerCase());
  return {
    state: absent.length === 0 ? "in_place" : "missing",
    foundIn,
    whatWouldFixIt: `Attach a photo: ${names.join(all ? ", and " : ", or ")}.`,
    canStillBeHad: all
      ? absent.every((subject) => laterPhotos.has(subject))
      : absent.some((subject) => laterPhotos.has(subject)),
  };
}

/** What can still be photographed after the repair, as long as the part is held and the customer answers. */
const laterPhotos: ReadonlySet<PhotoSubject> = new Set([
  "plate",
  "failed_part",
  "part_labels",
  "board_front",
  "board_back",
  "receipt",
  "part_invoice",
  "signature",
]);

function stepState(checks: readonly [string, ...string[]], current: readonly JudgedReading[]): ItemOutcome {
  for (const check of checks) {
    const numbers = holds({ is: "decided", check }, current);
    if (numbers !== undefined) return readingState(numbers, checks[0], current);
  }
  return readingState(undefined, checks[0], current);
}

function proofItem(entry: EvidenceEntry, current: readonly JudgedReading[]): EvidenceItem {
  const { proofLabel, canBeProvenLater } = planOf(entry);
  const numbers = holds(entry.proof, current);
  return {
    key: "proof",
    label: proofLabel,
    state: numbers === undefined ? "missing" : "in_place",
    foundIn: (numbers ?? []).map((number): EvidencePlace => ({ kind: "reading", number })),
    whatWouldFixIt: "Record the reading or finding that shows this failure, with the range of the model sheet.",
    canStillBeHad: canBeProvenLater,
    mark: entry.mark,
  };
}

function readingState(
  numbers: readonly number[] | undefined,
  check: string,
  current: readonly JudgedReading[],
): ItemOutcome {
  const known = checkOf(check);
  return {
    state: numbers === undefined ? "missing" : "in_place",
    foundIn: (numbers ?? []).map((number) => ({ kind: "reading", number })),
    whatWouldFixIt: fixOf(check, current),
    canStillBeHad: known?.laterToo === true,
  };
}

/** Says what is wrong with the reading that is there; where there is none, what to read. */
function fixOf(check: string, current: readonly JudgedReading[]): string {
  const known = checkOf(check);
  const name = known?.name ?? check;
  const weak = current.find(({ reading, judgement }) => reading.check === check && !isDecided(judgement));
  if (weak?.judgement.kind === "proves_nothing")
    return `Reading ${weak.reading.number} (${name}): ${weak.judgement.why}`;
  if (weak !== undefined)
    return `Reading ${weak.reading.number} (${name}): note the range of the model sheet; a general one decides nothing.`;
  return `Record ${name} at ${known?.points ?? "the part"}; expected: ${known?.expect ?? "see the model sheet"}.`;
}

function hasPart({ partLines }: JobRecord): boolean {
  return partLines.some(({ role }) => role === "fitted");
}

function invoiceState({ partLines }: JobRecord, entry: EvidenceEntry): ItemOutcome {
  const fitted = partLines.filter(
    ({ role, component }) => role === "fitted" && (component === undefined || component === entry.component),
  );
  const invoiced = fitted.filter(({ partNumber, invoiceNumber }) => partNumber !== "" && invoiceNumber !== undefined);
  return {
    state: invoiced.length > 0 ? "in_place" : "missing",
    foundIn: invoiced.map(({ line }) => ({ kind: "part_line", line })),
    whatWouldFixIt: "Join the part line to the distributor's invoice: exact part number and invoice number.",
    canStillBeHad: true,
  };
}

function authorizationState({ job }: JobRecord): ItemOutcome {
  const given = job.authorizationNumber !== undefined && job.authorizationNumber.trim() !== "";
  return {
    state: given ? "in_place" : "missing",
    foundIn: given ? [{ kind: "job", field: "authorizationNumber" }] : [],
    whatWouldFixIt: "Ask the payer for the authorization number and enter it.",
    canStillBeHad: true,
  };
}
