import { formatDecimal } from "@/lib/format/format-decimal";
import { robustRate, unitSums } from "@/lib/statistics/intervals/robust-rate";
import { rateEstimate } from "@/lib/statistics/rate-estimate";
import { both, fraction, indexed, maths, over, raised } from "../_maths/maths";
import type { ExampleWords } from "../example-words";
import { Definition } from "./definition";

export function Rates({ examples }: { readonly examples: ExampleWords }) {
  return (
    <>
      <RateAndRange examples={examples} />
      <RangesOfRates examples={examples} />
    </>
  );
}

function RateAndRange({ examples }: { readonly examples: ExampleWords }) {
  return (
    <>
      <Definition
        of="rate"
        formula={maths`r = ${fraction("d", "T")}`}
        letters="d: failures, T: unit-years"
        example={examples.rate}
      >
        <p>
          Failures divided by unit-years, said as so many in 100 a year: 15 in 100 a year means 15 failures for every
          100 units watched for one year. Where all rates of a table are below 1 in 100 it says so many in 1,000.
        </p>
      </Definition>
      <Definition of="range" source="Confidence intervals; Neyman (1937), Philosophical Transactions A 236, 333–380.">
        <p>
          What the true rate could be, given how little or much was seen. If we could rerun this many times, ranges at
          95 in 100 would hold the true rate 95 times in 100. The darker middle of each mark is the same range at 50 in
          100. It covers chance only, not jobs coded wrongly.
        </p>
      </Definition>
    </>
  );
}

function RangesOfRates({ examples }: { readonly examples: ExampleWords }) {
  return (
    <>
      <Definition
        of="poisson-exact"
        formula={[
          maths`low = ${fraction(maths`${gamma("α/2")} ( d )`, "T")}`,
          maths`high = ${fraction(maths`${gamma("1−α/2")} ( d + 1 )`, "T")}`,
        ]}
        letters="Γ⁻¹: quantile of the gamma distribution of that shape; α: 1 less the level; with d = 0 the lower end is 0"
        example={`31 failures in 412 unit-years: ${worked("poisson-exact")}.`}
        source="Garwood (1936), Biometrika 28, 437–442."
      >
        <p>
          Exact Poisson limits: the lowest and highest rates under which the count that was seen is not an extreme one.
          They are never too narrow, and somewhat wide at small counts.
        </p>
      </Definition>
      <Definition
        of="poisson-robust"
        formula={[
          maths`r · exp ( ± t ${fraction("s", "d")} )`,
          maths`${raised("s", "2")} = ${fraction("n", maths`n − 1`)} ${over("∑", maths`i`)} ${raised(maths`( ${indexed("d", "i")} − r ${indexed("T", "i")} )`, "2")}`,
        ]}
        letters="t: quantile of Student’s distribution with n − 1 degrees of freedom, n: units; dispersion = s² ÷ d"
        example={examples.spread ?? bunchedExample}
        source="Cochran (1977), Sampling Techniques, section 6.4; Lawless and Nadeau (1995), Technometrics 37, 158–168."
      >
        <p>
          Some machines fail again and again, and then failures bunch more than chance alone would have it. A range that
          counts by unit is made as well, and where failures bunch and it is the wider one, it is shown instead; the
          table says so.
        </p>
      </Definition>
      <Definition
        of="poisson-mid-p"
        formula={maths`P ( X > d ) + ${fraction("1", "2")} P ( X = d ) = 1 − ${fraction("α", "2")}`}
        letters="at the upper end, for a Poisson count X; likewise at the lower end"
        example={`31 failures in 412 unit-years: ${worked("poisson-mid-p")}.`}
        source="Cohen and Yang (1994), Statistics in Medicine 13, 2189–2203."
      >
        <p>
          The count that was seen weighs only half towards being extreme. Shorter than the exact range and right on
          average, but at some rates it holds the truth a little less often than it says. No page uses it by itself.
        </p>
      </Definition>
    </>
  );
}

const gamma = (at: string) => both("Γ", at, maths`−1`);

function worked(method: "poisson-exact" | "poisson-mid-p"): string {
  const { point, lo, hi } = rateEstimate({ events: 31, unitYears: 412, level: 0.95, method });
  const [rate, low, high] = [point, lo, hi].map((value) => formatDecimal(100 * value, 2));
  return `${rate} in 100 a year (${low} to ${high})`;
}

/** Forty units watched for a year each, four of them with eight failures: what the words look like without data. */
const bunched = robustRate({
  ...unitSums(Array.from({ length: 40 }, (_, unit) => ({ events: unit % 10 === 0 ? 8 : 0, exposure: 1 }))),
  confidence: 0.95,
});
const bunchedExample =
  bunched.kind === "interval"
    ? `Of 40 units watched for a year, 4 failed 8 times each: dispersion ${Math.round(bunched.dispersion)}, so the range by unit is shown.`
    : undefined;
