import { type PhotoSubject, photoSubjectKeys } from "@/lib/domain/job";
import { checkOf } from "@/lib/evidence/checks";
import type { EvidenceCheck } from "@/lib/evidence/evidence-check";

/** Something that a claim lacks and a technician can still give. */
export interface AskableGap {
  /** Key of the item of the evidence check. */
  readonly item: string;
  readonly label: string;
  readonly whatWouldFixIt: string;
  readonly canStillBeHad: boolean;
  readonly check: string | undefined;
  readonly subject: PhotoSubject | undefined;
}

/** Missing readings and pictures; what only the desk can give, such as an invoice or an authorization, is not asked at the machine. */
export function askableGaps({ items }: EvidenceCheck): readonly AskableGap[] {
  return items
    .filter(({ key, state }) => state === "missing" && !ofTheDesk.has(key))
    .map(({ key, label, whatWouldFixIt, canStillBeHad }) => ({
      item: key,
      label,
      whatWouldFixIt,
      canStillBeHad,
      check: key.startsWith("check:") && checkOf(key.slice("check:".length)) ? key.slice("check:".length) : undefined,
      subject: subjectOf(key),
    }));
}

const ofTheDesk: ReadonlySet<string> = new Set(["part_invoice", "authorization", "proof"]);

function subjectOf(key: string): PhotoSubject | undefined {
  const named =
    key === "part_labels" ? "part_labels" : key.startsWith("photo:") ? key.slice("photo:".length).split("+")[0] : "";
  return photoSubjectKeys.find((subject) => subject === named);
}
