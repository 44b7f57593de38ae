import { DefinitionList } from "@/app/_ui/definition-list";
import { Plate } from "@/app/_ui/plate";
import { type ComponentLife, fewestFailuresForFit } from "@/lib/failures/component-life";
import type { LifeShape } from "@/lib/failures/life-shape";
import { daysPerYear } from "@/lib/failures/rate-question";
import { formatCounted } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";
import type { RefusedFit } from "@/lib/statistics/life/fit-location-scale";
import type { LifeEstimate } from "@/lib/statistics/life/life-estimate";

const shapeWords: Readonly<Record<LifeShape, string>> = {
  "fails early": "Failures come early and thin out with age: the whole range of the shape lies below 1.",
  "wears out": "Failures grow with age: the whole range of the shape lies above 1.",
  "age makes no clear difference": "The range of the shape holds 1: the data do not say whether age matters.",
  "not fitted": "",
};

/** The Weibull life in words and figures, or why there is none. */
export function FittedLife({ life }: { readonly life: ComponentLife }) {
  const { weibull } = life;
  if (weibull.kind === "refused") {
    return (
      <Plate title="Does age matter?">
        <p>{refusalWords(weibull)}</p>
      </Plate>
    );
  }
  return (
    <Plate title="Does age matter?">
      <p>{shapeWords[life.shape]}</p>
      <DefinitionList
        items={[
          {
            term: "Weibull shape",
            detail: withLimits(weibull.shape, 1, 2),
            source: "maximum likelihood; range by profile likelihood",
          },
          {
            term: "Weibull scale",
            detail: `${withLimits(weibull.scale, daysPerYear, 1)} years`,
            source: "age by which 63 in 100 would have failed",
          },
          {
            term: "Made from",
            detail: `${formatCounted(weibull.events, "failure")} in ${formatCounted(weibull.lives, "life", "lives")}`,
          },
        ]}
      />
    </Plate>
  );
}

function withLimits({ value, profile }: LifeEstimate, unit: number, decimals: number): string {
  const bound = (end: number | "unbounded", name: string) =>
    end === "unbounded" ? name : formatDecimal(end / unit, decimals);
  return `${formatDecimal(value / unit, decimals)} (${bound(profile.low, "no lower limit")} to ${bound(profile.high, "no upper limit")})`;
}

function refusalWords(refused: RefusedFit): string {
  switch (refused.reason) {
    case "no-exposure":
      return "No unit was watched for any time, so there is nothing to fit.";
    case "no-events":
      return "Nothing failed, so there is nothing to fit.";
    case "too-few-events":
      return `${formatCounted(refused.events, "failure")}: under ${fewestFailuresForFit} a fitted life would be a guess drawn as a curve.`;
    case "failure-at-age-zero":
      return "Failures on the first day have no logarithm of age, so no life was fitted.";
    case "flat-likelihood":
      return "The failures fit many lives equally well, so none is shown.";
  }
}
