// Everything on a job that puts the cause outside the part: the job's own cause, the readings, and what the photos show.
import { type Cause, causes } from "@/lib/domain/cause";
import type { JobRecord, PhotoSubject } from "@/lib/domain/job";
import { holds } from "./condition";
import type { JudgedReading } from "./current-readings";
import { isBad } from "./decided";
import type { EvidenceEntry } from "./entry";
import { planOf } from "./entry-plan";
import type { OutsideFinding } from "./evidence-check";
import { checkOfReading } from "./own-check";

/** @param entry  undefined where the component has no rules: then only the job's own cause counts */
export function outsideFindings(
  record: JobRecord,
  entry: EvidenceEntry | undefined,
  current: readonly JudgedReading[],
): readonly OutsideFinding[] {
  const own = ownCause(record);
  if (entry === undefined) return own;
  const listed = listedExclusions(entry, current);
  return [...own, ...listed, ...checkedCauses(entry, current, listed), ...shownInPhotos(record, entry, current)];
}

function ownCause({ job }: JobRecord): readonly OutsideFinding[] {
  const { kind, name } = causes[job.cause];
  if (kind !== "outside") return [];
  return [{ cause: job.cause, why: `the job is closed as "${name}"`, foundIn: [{ kind: "job", field: "cause" }] }];
}

function listedExclusions(entry: EvidenceEntry, current: readonly JudgedReading[]): readonly OutsideFinding[] {
  return entry.notCoveredIf.flatMap(({ text, cause, when }) => {
    const numbers = holds(when, current);
    return numbers === undefined
      ? []
      : [{ cause, why: text, foundIn: numbers.map((number) => ({ kind: "reading" as const, number })) }];
  });
}

/** A required check that came out with an outside cause excludes the part even where the entry's list is silent. */
function checkedCauses(
  entry: EvidenceEntry,
  current: readonly JudgedReading[],
  listed: readonly OutsideFinding[],
): readonly OutsideFinding[] {
  const { requiredChecks } = planOf(entry);
  const isListed = (number: number) =>
    listed.some(({ foundIn }) => foundIn.some((place) => place.kind === "reading" && place.number === number));
  return current
    .filter(
      ({ reading }) =>
        !isListed(reading.number) &&
        (requiredChecks.has(reading.check) || alwaysOutside.has(reading.check) || reading.own !== undefined),
    )
    .flatMap(({ reading, judgement }) => {
      const foundIn = [{ kind: "reading" as const, number: reading.number }];
      if (judgement.kind === "finding") {
        const { cause, means } = judgement.finding;
        return cause === undefined ? [] : [{ cause, why: means, foundIn }];
      }
      const check = checkOfReading(reading);
      if (check?.outsideWhenBad === undefined || !isBad(judgement)) return [];
      return [{ cause: check.outsideWhenBad, why: `${check.name.toLowerCase()} out of range`, foundIn }];
    });
}

/** Looked at beyond the required steps, these speak for themselves. */
const alwaysOutside: ReadonlySet<string> = new Set(["downstream", "trap", "board_condition"]);

/** A picture of an object is evidence of an object, whatever else is on the job, unless a later look found the way clear. */
function shownInPhotos(
  { attachments }: JobRecord,
  entry: EvidenceEntry,
  current: readonly JudgedReading[],
): readonly OutsideFinding[] {
  const { excludedCauses } = planOf(entry);
  return attachments.flatMap(({ id, subject }) => {
    const shown = causeOfPhoto[subject];
    if (
      shown === undefined ||
      !excludedCauses.has(shown.cause) ||
      holds({ is: "good", check: shown.check }, current) !== undefined
    )
      return [];
    return [{ cause: shown.cause, why: shown.why, foundIn: [{ kind: "attachment" as const, id }] }];
  });
}

const causeOfPhoto: Partial<
  Record<PhotoSubject, { readonly cause: Cause; readonly why: string; readonly check: string }>
> = {
  foreign_object: { cause: "foreign_object", why: "a photo shows an object", check: "trap" },
  kinked_hose: { cause: "installation", why: "a photo shows the hose kinked or crushed", check: "hose" },
  suds: { cause: "suds_detergent", why: "a photo shows suds", check: "suds" },
};
