import { addDays, type Day } from "@/lib/calendar/day";
import { dayInWords } from "@/lib/calendar/day-words";

/** The sale dates that one version governs. */
export interface VersionSpan {
  readonly version: number;
  readonly effectiveFrom: Day;
  readonly effectiveTo: Day | undefined;
}

export type VersionPlace =
  | { readonly kind: "fits" }
  /** The version that runs without end is closed on the day before the new one begins. */
  | { readonly kind: "closes"; readonly version: number; readonly on: Day }
  | { readonly kind: "overlaps"; readonly sentence: string };

/** Where a new version stands among those of its policy: no sale date may lie under two. */
export function placeVersion(next: Omit<VersionSpan, "version">, others: readonly VersionSpan[]): VersionPlace {
  const meeting = others.filter((other) => meets(next, other));
  const [first] = meeting;
  if (first === undefined) return { kind: "fits" };
  if (meeting.length === 1 && first.effectiveTo === undefined && first.effectiveFrom < next.effectiveFrom) {
    return { kind: "closes", version: first.version, on: addDays(next.effectiveFrom, -1) };
  }
  const spans = meeting.map(({ version, effectiveFrom, effectiveTo }) => {
    const end = effectiveTo === undefined ? "with no end" : `to ${dayInWords(effectiveTo)}`;
    return `version ${version} (from ${dayInWords(effectiveFrom)} ${end})`;
  });
  return {
    kind: "overlaps",
    sentence: `The sale dates from ${dayInWords(next.effectiveFrom)} ${next.effectiveTo === undefined ? "with no end" : `to ${dayInWords(next.effectiveTo)}`} overlap those of ${spans.join(" and ")}. Change the first or last sale day, or retire the other version.`,
  };
}

function meets(one: Omit<VersionSpan, "version">, other: Omit<VersionSpan, "version">): boolean {
  return isUntil(one.effectiveFrom, other.effectiveTo) && isUntil(other.effectiveFrom, one.effectiveTo);
}

function isUntil(on: Day, end: Day | undefined): boolean {
  return end === undefined || on <= end;
}
