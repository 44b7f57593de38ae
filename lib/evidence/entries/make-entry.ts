// A short notation for the tables of entries; every maker here returns plain data.
import type { Cause } from "@/lib/domain/cause";
import type { PhotoSubject } from "@/lib/domain/job";
import type { ProductType } from "@/lib/domain/product-type";
import type { SourceMark } from "@/lib/domain/reading";
import type { Condition } from "../condition";
import type { Against, EvidenceEntry, EvidenceNeed, Exclusion } from "../entry";
import type { ReadingRule } from "../judge-reading";
import type { SourceKey } from "./sources";

interface EntryNotes {
  readonly modes: readonly string[];
  readonly class: string;
  readonly symptoms: readonly string[];
  readonly steps: readonly (string | readonly [string, ...string[]])[];
  readonly proof: Condition;
  readonly against: readonly (readonly [text: string, when: Condition, ...onlyFor: readonly string[]])[];
  readonly exclusions: readonly (readonly [text: string, cause: Cause, when: Condition])[];
  readonly evidence: readonly EvidenceNeed[];
  /** An outside cause has no part to label and no winding to log. */
  readonly withoutPart?: true;
  readonly tag: string;
  readonly sources: readonly SourceKey[];
  readonly mark: SourceMark;
}

/** One entry; the three things that every part claim needs are added in front. */
export function entry(
  productType: ProductType,
  id: string,
  component: string,
  failure: string,
  notes: EntryNotes,
): EvidenceEntry {
  const listed: readonly Against[] = notes.against.map(([text, when, ...onlyFor]) =>
    onlyFor.length === 0 ? { text, when } : { text, when, onlyFor },
  );
  const reseats =
    notes.steps.flat().includes("connector_reseat") && !listed.some(({ text }) => text.includes("reseat"));
  const contradictedBy = reseats ? [...listed, curedByReseating] : listed;
  const notCoveredIf: readonly Exclusion[] = notes.exclusions.map(([text, cause, when]) => ({ text, cause, when }));
  return {
    id,
    productType,
    component,
    failure,
    failureModes: notes.modes,
    failureClass: notes.class,
    symptoms: notes.symptoms,
    steps: notes.steps.map((step) => (typeof step === "string" ? [step] : step)),
    proof: notes.proof,
    contradictedBy,
    notCoveredIf,
    minimumEvidence: notes.withoutPart ? notes.evidence : [...everyPartClaim, ...notes.evidence],
    sourceTag: notes.tag,
    sources: notes.sources,
    mark: notes.mark,
  };
}

/** Wherever the connectors must be reseated, a cure by reseating speaks against the part. */
const curedByReseating: Against = {
  text: "connector reseated and fault gone",
  when: { is: "word", check: "connector_reseat", words: ["cured"] },
};

const everyPartClaim: readonly EvidenceNeed[] = [
  { text: "model/serial plate photo", need: { kind: "photo", subjects: ["plate"] } },
  { text: "reading with meter mode, unit, test points, circuit isolated or not", need: { kind: "reading_log" } },
  { text: "part label old and new", need: { kind: "part_labels" } },
];

export function photo(text: string, ...subjects: readonly PhotoSubject[]): EvidenceNeed {
  return { text, need: { kind: "photo", subjects } };
}

export function photos(text: string, ...subjects: readonly PhotoSubject[]): EvidenceNeed {
  return { text, need: { kind: "photos", subjects } };
}

/** A reading of the check that decides something, or that meets the condition given. */
export function reading(text: string, check: string, when: Condition = { is: "decided", check }): EvidenceNeed {
  return { text, need: { kind: "reading", check, when } };
}

export function authorization(text: string): EvidenceNeed {
  return { text, need: { kind: "authorization" } };
}

export const receipt: EvidenceNeed = photo("proof of purchase", "receipt");
export const partInvoice: EvidenceNeed = { text: "part number with its invoice", need: { kind: "part_invoice" } };

export function saw(check: string, ...words: readonly string[]): Condition {
  return { is: "word", check, words };
}
export function good(check: string): Condition {
  return { is: "good", check };
}
export function bad(check: string): Condition {
  return { is: "bad", check };
}
export function absent(check: string): Condition {
  return { is: "absent", check };
}
export function open(check: string): Condition {
  return { is: "open", check };
}
export function taken(check: string): Condition {
  return { is: "taken", check };
}
export function decided(check: string): Condition {
  return { is: "decided", check };
}
export function three(check: string): Condition {
  return { is: "three", check };
}
export function withTemperature(check: string): Condition {
  return { is: "with_temperature", check };
}
export function worthless(check: string, ...rules: readonly ReadingRule[]): Condition {
  return { is: "worthless", check, rules };
}
export function unequal(check: string): Condition {
  return { is: "unequal", check };
}
export function equal(check: string): Condition {
  return { is: "equal", check };
}
export function all(...of: readonly Condition[]): Condition {
  return { is: "all", of };
}
export function any(...of: readonly Condition[]): Condition {
  return { is: "any", of };
}
export function not(of: Condition): Condition {
  return { is: "not", of };
}
export const byPolicy: Condition = { is: "by_policy" };
