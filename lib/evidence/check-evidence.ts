// Whether a job shows that its part failed: proven, missing, contradicted, outside the part, or no rules for the part.
import { causes } from "@/lib/domain/cause";
import { componentOf } from "@/lib/domain/components";
import type { JobRecord } from "@/lib/domain/job";
import { productTypes } from "@/lib/domain/product-type";
import type { ExpectedRange } from "@/lib/domain/reading";
import { holds } from "./condition";
import { currentReadings, type JudgedReading, judgeReadings } from "./current-readings";
import { entriesFor } from "./entries";
import type { EvidenceEntry } from "./entry";
import type { Contradiction, EvidenceCheck, EvidenceKind, WordWarning } from "./evidence-check";
import { evidenceItems } from "./evidence-items";
import { exclusionWarnings } from "./exclusion-warnings";
import { outsideFindings } from "./outside-findings";

/**
 * @param record  the job with its unit and everything found on it
 * @param ranges  expected ranges of this model and its parts; without them the ranges noted with the readings decide,
 *                and general ones only screen nonsense
 */
export function checkEvidence(record: JobRecord, ranges: readonly ExpectedRange[]): EvidenceCheck {
  return checkFindings(record, ranges, exclusionWarnings(record.job));
}

/** The same with `warnings` as they are given, for those who do not look at words and judge a great many jobs. */
export function checkFindings(
  record: JobRecord,
  ranges: readonly ExpectedRange[],
  warnings: readonly WordWarning[] = [],
): EvidenceCheck {
  const { job, unit } = record;
  const current = currentReadings(judgeReadings(record.readings, ranges, unit.productType));
  const candidates =
    job.component === undefined ? [] : matchingEntries(entriesFor(unit.productType, job.component), job.failureMode);
  const checked = candidates.map((entry) => checkEntry(record, entry, current));
  const best = checked.reduce<Checked | undefined>(
    (chosen, next) => (chosen === undefined || next.fit > chosen.fit ? next : chosen),
    undefined,
  );
  if (best !== undefined) {
    const { kind, entryId, items, contradictions, outside } = best.check;
    return { kind, entryId, items, contradictions, outside, warnings, verdict: verdictOf(best.entry, best.check) };
  }
  const outside = outsideFindings(record, undefined, current);
  const kind = outside.length > 0 ? "outside_cause" : "no_entry";
  return {
    kind,
    entryId: undefined,
    items: [],
    contradictions: [],
    outside,
    warnings,
    verdict: verdictWithoutEntry(record, kind),
  };
}

/** Entries that know the failure mode; where none does, or the mode is not recorded, all of the component's. */
function matchingEntries(entries: readonly EvidenceEntry[], failureMode: string | undefined): readonly EvidenceEntry[] {
  const knowing = entries.filter((entry) => failureMode !== undefined && entry.failureModes.includes(failureMode));
  return knowing.length > 0 ? knowing : entries;
}

interface Checked {
  readonly entry: EvidenceEntry;
  /** Put into words only where this entry is the one that is used. */
  readonly check: Omit<EvidenceCheck, "warnings" | "verdict">;
  /** How well the readings fit the entry: its proof counts most, then what speaks against it, then items in place. */
  readonly fit: number;
}

function checkEntry(record: JobRecord, entry: EvidenceEntry, current: readonly JudgedReading[]): Checked {
  const items = evidenceItems(record, entry, current);
  const contradictions = contradictionsOf(record, entry, current);
  const outside = outsideFindings(record, entry, current);
  const isMissing = items.some((item) => item.state === "missing");
  const kind = kindOf(outside.length > 0, contradictions.length > 0, isMissing);
  const inPlace = items.filter((item) => item.state === "in_place").length;
  const proofFit = holds(entry.proof, current) === undefined ? 0 : 100;
  return {
    entry,
    check: { kind, entryId: entry.id, items, contradictions, outside },
    fit: proofFit - 10 * contradictions.length + inPlace / items.length,
  };
}

function kindOf(isOutside: boolean, isContradicted: boolean, isMissing: boolean): EvidenceKind {
  if (isOutside) return "outside_cause";
  if (isContradicted) return "contradicted";
  return isMissing ? "missing" : "proven";
}

function contradictionsOf(
  { job }: JobRecord,
  entry: EvidenceEntry,
  current: readonly JudgedReading[],
): readonly Contradiction[] {
  const byReadings = entry.contradictedBy
    .filter(
      ({ onlyFor }) => onlyFor === undefined || (job.failureMode !== undefined && onlyFor.includes(job.failureMode)),
    )
    .flatMap(({ text, when }) => (holds(when, current) ?? []).map((by) => ({ by, why: text })));
  if (causes[job.cause].kind !== "none") return byReadings;
  return [
    ...byReadings,
    { by: undefined, why: `the job is closed as "${causes[job.cause].name}", not as a failure of the part` },
  ];
}

function verdictOf(
  entry: EvidenceEntry,
  check: Pick<EvidenceCheck, "kind" | "items" | "contradictions" | "outside">,
): string {
  const part = nameOf(entry.component);
  switch (check.kind) {
    case "proven":
      return `${part}: ${entry.failure} is proven; every item is in place.`;
    case "missing": {
      const missing = check.items.filter((item) => item.state === "missing");
      const lost = missing.filter((item) => !item.canStillBeHad).length;
      const afterwards = lost === 0 ? "All of it can still be had." : `${lost} of it cannot be had any more.`;
      return `${part}: ${entry.failure} is not yet proven; missing: ${missing.map((item) => item.label).join("; ")}. ${afterwards}`;
    }
    case "contradicted":
      return `${part}: ${entry.failure} is contradicted: ${unique(check.contradictions.map(describeContradiction)).join("; ")}.`;
    case "outside_cause":
      return `The cause lies outside the part: ${unique(check.outside.map(({ why }) => why)).join("; ")}. The policy wording decides who pays.`;
    case "no_entry":
      return `${part}: no evidence rules.`;
  }
}

function verdictWithoutEntry({ job, unit }: JobRecord, kind: EvidenceKind): string {
  if (kind === "outside_cause")
    return `The cause lies outside the part: ${causes[job.cause].name}. The policy wording decides who pays.`;
  if (job.component === undefined)
    return "The job names no component, so no evidence rules apply. Name the component that failed.";
  return `There are no evidence rules for ${nameOf(job.component)} on this kind of appliance (${productTypes[unit.productType].toLowerCase()}); the readings stand as they are.`;
}

function describeContradiction({ by, why }: Contradiction): string {
  return by === undefined ? why : `reading ${by}: ${why}`;
}

function nameOf(component: string): string {
  return componentOf(component)?.name ?? component;
}

function unique(texts: readonly string[]): readonly string[] {
  return [...new Set(texts)];
}
