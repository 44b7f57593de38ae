import type { Estimate } from "@/lib/statistics/estimate";
import { gradeOf } from "@/lib/statistics/estimate-grade";
import { decimalsFor, type EstimateFrame, frameFor, scaleOf } from "./estimate-scale";
import { formatCount } from "./format-count";
import { formatDecimal, formatExposure } from "./format-decimal";

/** The pieces of an estimate in words, in the order in which they are read: number, range, count. */
export type EstimateWords =
  | {
      readonly kind: "figure";
      readonly grade: "firm" | "loose";
      readonly figure: string;
      readonly range: string;
      readonly count: string;
    }
  /** Nothing happened: the only thing learnt is how large the rate could still be. */
  | { readonly kind: "none-seen"; readonly count: string; readonly upTo: string }
  /** Too little to give a rate; the range is for the table twin only. */
  | { readonly kind: "too-few"; readonly count: string; readonly refusal: string; readonly range: string };

export interface EstimateWording {
  /** Shared by a whole table; otherwise chosen for this estimate alone. */
  readonly frame?: EstimateFrame | undefined;
  /** What was counted; failures where absent. */
  readonly counted?: CountedNoun | undefined;
  /** What a ratio is measured against, such as "the fleet". */
  readonly against?: string | undefined;
}

export const countedNouns = {
  failures: { one: "failure", many: "failures" },
  calls: { one: "call", many: "calls" },
  jobs: { one: "job", many: "jobs" },
} as const;
export type CountedNoun = keyof typeof countedNouns;

/** Grade, basis and rounding turned into words. @throws RangeError for an estimate that cannot be */
export function formatEstimate(estimate: Estimate, wording: EstimateWording = {}): EstimateWords {
  requirePossible(estimate);
  const frame = wording.frame ?? frameFor([estimate]);
  const unit = unitWords(estimate, frame, wording);
  const count = countWords(estimate, wording.counted ?? "failures");
  const range = rangeWords(estimate, frame);
  const grade = gradeOf(estimate);
  if (grade === "thin") {
    const refusal = `too few to give a ${estimate.basis.kind === "ratio" ? "comparison" : "rate"}`;
    return { kind: "too-few", count, refusal, range: `${range} ${unit}` };
  }
  if (estimate.events === 0) {
    return { kind: "none-seen", count, upTo: `${valueWords(estimate, estimate.hi, frame)} ${unit}` };
  }
  return { kind: "figure", grade, figure: `${pointWords(estimate, frame)} ${unit}`, range, count };
}

/** The same as one line of text, for labels, live regions and files. */
export function describeEstimate(words: EstimateWords): string {
  switch (words.kind) {
    case "figure":
      return `${words.figure} (${words.range}), ${words.count}${words.grade === "loose" ? " — loose" : ""}`;
    case "none-seen":
      return `${words.count} — anything up to ${words.upTo} would still fit`;
    case "too-few":
      return `${words.count} — ${words.refusal}`;
  }
}

/** "in 100 a year", "in 1,000", "times the fleet". */
export function unitWords({ basis }: Estimate, frame: EstimateFrame, wording: EstimateWording = {}): string {
  switch (basis.kind) {
    case "rate":
      return `in ${formatCount(frame)} a year`;
    case "share":
      return `in ${formatCount(frame)}`;
    case "ratio":
      return `times ${wording.against ?? "the fleet"}`;
  }
}

function countWords({ basis, events, n }: Estimate, counted: CountedNoun): string {
  const noun = countedNouns[counted][events === 1 ? "one" : "many"];
  switch (basis.kind) {
    case "rate":
      return `${formatCount(events)} ${noun} in ${formatExposure(n)} unit-years`;
    case "share":
      return `${formatCount(events)} of ${formatCount(n)}`;
    case "ratio":
      return `${formatCount(events)} ${noun}, ${formatExposure(n)} expected`;
  }
}

function rangeWords(estimate: Estimate, frame: EstimateFrame): string {
  return `${valueWords(estimate, estimate.lo, frame)} to ${valueWords(estimate, estimate.hi, frame)}`;
}

/** A rate that rounds to 0 although something happened is never printed as 0. */
function pointWords(estimate: Estimate, frame: EstimateFrame): string {
  const words = valueWords(estimate, estimate.point, frame);
  return /[1-9]/.test(words) ? words : `under ${words.replace(/0$/, "1")}`;
}

function valueWords(estimate: Estimate, value: number, frame: EstimateFrame): string {
  return formatDecimal(value * scaleOf(estimate, frame), decimalsFor(estimate, frame));
}

function requirePossible({ events, n, point, lo, hi }: Estimate): void {
  if (!(Number.isSafeInteger(events) && events >= 0)) {
    throw new RangeError(`estimate.events must be a whole number, 0 or more; it is ${events}`);
  }
  if (!(n > 0 && n < Number.POSITIVE_INFINITY)) throw new RangeError(`estimate.n must be finite, above 0; it is ${n}`);
  if (!(lo >= 0 && lo <= hi && hi < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`estimate.lo must be 0 or more and not above a finite hi; they are ${lo} and ${hi}`);
  }
  if (!(point >= 0 && point < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`estimate.point must be finite, 0 or more; it is ${point}`);
  }
}
