// The list that a claim needs: what every part claim needs, what the entry asks for, the required checks, and the proof.
import type { JobRecord, PhotoSubject } from "@/lib/domain/job";
import { photoSubjects } from "@/lib/domain/job";
import { checkOf } from "./checks";
import { holds } from "./condition";
import type { JudgedReading } from "./current-readings";
import { isDecided } from "./decided";
import type { EvidenceEntry, EvidenceNeed } from "./entry";
import type { EvidenceItem, EvidencePlace } from "./evidence-check";
import { loggedReadings } from "./reading-log";

export function evidenceItems(
  record: JobRecord,
  entry: EvidenceEntry,
  current: readonly JudgedReading[],
): readonly EvidenceItem[] {
  const asked = entry.minimumEvidence.map((need) => neededItem(record, entry, current, need));
  const covered = new Set(asked.map((item) => item.key));
  const steps = entry.steps
    .filter((step) => !step.some((key) => covered.has(`check:${key}`)))
    .map((step) => stepItem(entry, current, step));
  return [...asked, ...steps, proofItem(entry, current)];
}

function neededItem(
  record: JobRecord,
  entry: EvidenceEntry,
  current: readonly JudgedReading[],
  { text, need }: EvidenceNeed,
): EvidenceItem {
  const common = { label: text, mark: entry.mark };
  switch (need.kind) {
    case "photo":
    case "photos":
      return {
        ...common,
        key: `photo:${need.subjects.join("+")}`,
        ...photoState(record, need.subjects, need.kind === "photos"),
      };
    case "reading":
      return { ...common, key: `check:${need.check}`, ...readingState(holds(need.when, current), need.check, current) };
    case "reading_log":
      return { ...common, key: "reading_log", ...loggedReadings(entry, current) };
    case "part_labels":
      return {
        ...common,
        key: "part_labels",
        ...(hasPart(record) ? photoState(record, ["part_labels"], true) : notApplicable),
      };
    case "part_invoice":
      return { ...common, key: "part_invoice", ...(hasPart(record) ? invoiceState(record, entry) : notApplicable) };
    case "authorization":
      return { ...common, key: "authorization", ...authorizationState(record) };
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

function stepItem(
  entry: EvidenceEntry,
  current: readonly JudgedReading[],
  step: readonly [string, ...string[]],
): EvidenceItem {
  const done = step.map((check) => holds({ is: "decided", check }, current)).find((numbers) => numbers !== undefined);
  const [first] = step;
  const label = step.map((key) => checkOf(key)?.name ?? key).join(" or ");
  return { key: `check:${first}`, label, mark: entry.mark, ...readingState(done, first, current) };
}

function proofItem(entry: EvidenceEntry, current: readonly JudgedReading[]): EvidenceItem {
  const numbers = holds(entry.proof, current);
  return {
    key: "proof",
    label: `Shown: ${entry.failure}`,
    state: numbers === undefined ? "missing" : "in_place",
    foundIn: (numbers ?? []).map((number): EvidencePlace => ({ kind: "reading", number })),
    whatWouldFixIt: "Record the reading or finding that shows this failure, with the range of the model sheet.",
    canStillBeHad: entry.steps.flat().some((key) => checkOf(key)?.laterToo === true),
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
