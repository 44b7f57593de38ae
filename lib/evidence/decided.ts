// Plain questions asked of a judgement. A range that only screens nonsense answers none of them.
import type { Judgement } from "./judge-reading";

/** The part or the path is as it should be. */
export function isGood(judgement: Judgement): boolean {
  switch (judgement.kind) {
    case "finding":
      return judgement.finding.state === "good";
    case "inside":
      return !judgement.range.screensOnly;
    case "open":
    case "short":
      return judgement.good;
    default:
      return false;
  }
}

/** The part or the path is shown not to be as it should be. */
export function isBad(judgement: Judgement): boolean {
  switch (judgement.kind) {
    case "finding":
      return judgement.finding.state !== "good";
    case "below":
      return !judgement.range.screensOnly && judgement.value < (judgement.range.condemnsBelow ?? judgement.value + 1);
    case "above":
      return !judgement.range.screensOnly;
    case "open":
    case "short":
      return !judgement.good;
    default:
      return false;
  }
}

/** Zero volts, or so far under line that nothing is sent. Half of the low end is this project's reading of "far under line". */
export function isAbsent(judgement: Judgement): boolean {
  return isBad(judgement) && judgement.kind === "below" && judgement.value < (judgement.range.low ?? 0) / 2;
}

/** It decides something, or it is a code that the machine itself stored. */
export function isDecided(judgement: Judgement): boolean {
  return judgement.kind === "code" || isGood(judgement) || isBad(judgement);
}
