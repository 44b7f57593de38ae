import { fewestFailuresForFit } from "@/lib/failures/component-life";
import type { LifeModel, ModelCheck } from "@/lib/failures/life-model";
import type { LifeShape } from "@/lib/failures/life-shape";
import { formatCounted } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";
import { formatProbability } from "@/lib/format/format-probability";
import type { RefusedFit } from "@/lib/statistics/life/fit-location-scale";
import type { Bound } from "@/lib/statistics/life/profile-limit";

/** Words about age only where the whole range of the shape lies on one side of 1. */
export const shapeWords: Readonly<Record<LifeShape, string>> = {
  "fails early": "Failures come early and thin out with age: the whole range of the shape lies below 1.",
  "wears out": "Failures grow with age: the whole range of the shape lies above 1.",
  "age makes no clear difference": "The range of the shape holds 1: the data do not say whether age matters.",
  "not fitted": "",
};

export function refusalWords(refused: RefusedFit): string {
  switch (refused.reason) {
    case "no-exposure":
      return "No unit was watched for any time, so there is nothing to fit.";
    case "no-events":
      return `None of ${formatCounted(refused.lives, "life", "lives")} ended in failure, so there is nothing to fit.`;
    case "too-few-events":
      return `${formatCounted(refused.events, "failure")}: under ${fewestFailuresForFit} a fitted life would be a guess drawn as a curve.`;
    case "failure-at-age-zero":
      return "Failures on the first day have no logarithm of age, so no life was fitted.";
    case "flat-likelihood":
      return `The ${formatCounted(refused.events, "failure")} fit many lives equally well, so none is shown.`;
  }
}

/** "3.1 (2.8 to 3.5)"; a limit that the data do not set is named. */
export function withBounds(
  value: number,
  { low, high }: { low: Bound; high: Bound },
  unit: number,
  decimals: number,
): string {
  const bound = (end: Bound, name: string) => (end === "unbounded" ? name : formatDecimal(end / unit, decimals));
  return `${formatDecimal(value / unit, decimals)} (${bound(low, "no lower limit")} to ${bound(high, "no upper limit")})`;
}

const familyNames: Readonly<Record<ModelCheck["family"], string>> = {
  weibull: "Weibull",
  exponential: "exponential",
  lognormal: "lognormal",
};

/** Differences of the criterion under this mean nothing; common practice. */
const noticeable = 2;

/** Which of the three shapes fits best, and by how much. */
export function checkWords({ checks }: LifeModel): string {
  const fitted = checks.filter((check) => check.kind === "fitted");
  const all = fitted.map(({ family, aic }) => `${familyNames[family]} ${formatDecimal(aic, 1)}`).join(", ");
  const own = fitted.find(({ family }) => family === "weibull")?.behind ?? 0;
  const best = fitted.find(({ behind }) => behind === 0);
  if (own >= noticeable && best !== undefined)
    return `The ${familyNames[best.family]} life fits better by Akaike’s criterion (${all}; smaller is better): read the Weibull figures with reserve.`;
  const rivals = fitted.filter(({ family, behind }) => family !== "weibull" && behind - own < noticeable);
  const equal = rivals.map(({ family }) => familyNames[family]).join(" and the ");
  return rivals.length === 0
    ? `Of the three shapes tried the Weibull fits best by Akaike’s criterion (${all}; smaller is better).`
    : `The ${equal} ${rivals.length === 1 ? "fits" : "fit"} as well as the Weibull by Akaike’s criterion (${all}; smaller is better).`;
}

/** Whether the line follows the failures age by age. */
export function followWords({ follows, weibull }: LifeModel): string {
  if (follows.kind === "too-few-events")
    return `${formatCounted(weibull.events, "failure")} are too few to check the line age by age.`;
  const test = `chi-square ${formatDecimal(follows.chiSquare, 1)} on ${follows.degreesOfFreedom}, probability ${formatProbability(follows.probability)}`;
  return follows.probability < 0.05
    ? `The line does not follow the failures age by age (${test}): believe the steps, and none of the fitted figures.`
    : `Age by age the line shows no sign of missing the failures (${test}).`;
}
