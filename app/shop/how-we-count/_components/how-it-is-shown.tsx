import { capitalised } from "@/lib/format/capitalised";
import { describeEstimate, formatEstimate } from "@/lib/format/format-estimate";
import {
  firmDenominator,
  firmEvents,
  firmRelativeWidth,
  gradeOf,
  thinDenominator,
} from "@/lib/statistics/estimate-grade";
import { rateEstimate } from "@/lib/statistics/rate-estimate";
import { observedExpectedEstimate } from "@/lib/statistics/ratio-estimate";
import { firmRatioEvents, firmRatioSpan, thinRatioCount, thinRatioSpan } from "@/lib/statistics/ratio-grade";
import { shareEstimate } from "@/lib/statistics/share-estimate";
import { Definition } from "./definition";
import { GradeKey } from "./grade-key";

export function HowItIsShown() {
  return (
    <>
      <Definition
        of="grades"
        source="After the presentation standards of the US National Center for Health Statistics (Parker and others 2017, Vital and Health Statistics 2-175), merged into one table for this program."
      >
        <p>
          <strong>Firm</strong>: at least {firmEvents} failures, a denominator of at least {firmDenominator}, and a
          range no wider than {firmRelativeWidth} times the rate. Filled dot, solid band. <strong>Loose</strong>:
          anything between. Ring, dashed band. <strong>Thin</strong>: a denominator below {thinDenominator}. Hatched
          band without a dot, and no rate in words.
        </p>
        <GradeKey />
      </Definition>
      <Definition
        of="ratio-grades"
        example={ratioExamples}
        source="This program’s own. Exact limits of 10 failures span a factor of 3.84 and of 9 one of 4.15, so the rule agrees with that for rates."
      >
        <p>
          A comparison has no unit-years below it but failures expected, and its range is a matter of factors.{" "}
          <strong>Firm</strong>: at least {firmRatioEvents} failures, and an upper end at most {firmRatioSpan} times the
          lower one. <strong>Thin</strong>: fewer than {thinRatioCount} failures both seen and expected, or a range that
          spans more than a factor of {thinRatioSpan} with 1 inside. <strong>Loose</strong>: anything between.
        </p>
      </Definition>
      <Definition of="zero-events" example={`None of 24: ${noneExample}. None in 48 unit-years: ${noRateExample}.`}>
        <p>
          No failure yet is not a rate of nothing. What has been learnt is how high the rate could still be, so that is
          what is said.
        </p>
      </Definition>
      <Definition of="rounding">
        <p>
          Numbers are rounded to what the range supports: whole ones unless the range is narrower than 2, then one
          decimal, and two where it is narrower than 0.2. Something that happened is never printed as 0. All rows of a
          table count in the same frame, in 100 or in 1,000.
        </p>
      </Definition>
      <Definition of="order">
        <p>
          Rows stand by name or by their lowest believable rate, the lower end of the range, and not by the rate itself:
          the smallest groups would lead by luck. Thin groups are never ranked; they wait in a closed list.
        </p>
      </Definition>
      <Definition of="causes">
        <p>
          That something fails more often with a model, a symptom or a technician does not say that it fails because of
          it. The jobs behind each number are one step away.
        </p>
      </Definition>
    </>
  );
}

const ratioExamples = [
  { observed: 14, expected: 7.8 },
  { observed: 6, expected: 1.2 },
  { observed: 3, expected: 1.2 },
]
  .map((counts) => observedExpectedEstimate({ ...counts, level: 0.95 }))
  .map((estimate) => `${capitalised(gradeOf(estimate))}: ${describeEstimate(formatEstimate(estimate))}.`)
  .join(" ");

const noneExample = describeEstimate(
  formatEstimate(shareEstimate({ events: 0, trials: 24, level: 0.95, method: "clopper-pearson" })),
);
const noRateExample = describeEstimate(
  formatEstimate(rateEstimate({ events: 0, unitYears: 48, level: 0.95, method: "poisson-exact" })),
);
