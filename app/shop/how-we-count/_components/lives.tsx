import { fewestFailuresForFit } from "@/lib/failures/component-life";
import { failedOnFirstDay, fewestPerBand } from "@/lib/failures/life-model";
import { ageBands } from "@/lib/failures/rate-question";
import { largestJump } from "@/lib/figures/drawn-curve";
import { fraction, indexed, maths, over, raised } from "../_maths/maths";
import type { ExampleWords } from "../example-words";
import { Definition } from "./definition";

export function Lives({ examples }: { readonly examples: ExampleWords }) {
  return (
    <>
      <Curves examples={examples} />
      <FittedLives examples={examples} />
      <RepeatFailures examples={examples} />
    </>
  );
}

function Curves({ examples }: { readonly examples: ExampleWords }) {
  return (
    <>
      <Definition
        of="share-failed"
        formula={maths`F ( t ) = 1 − ${over("∏", maths`${indexed("t", "i")} ≤ t`)} ( 1 − ${fraction(indexed("d", "i"), indexed("n", "i"))} )`}
        letters="d: failures at age t, n: lives at risk at that age. Range of S = 1 − F: S to the power exp(± z σ ÷ ln S), σ² = Σ d ÷ (n (n − d)), Greenwood’s sum"
        example={examples.shareFailed}
        source="Kaplan and Meier (1958), Journal of the American Statistical Association 53, 457–481; Greenwood (1926); late entry Cole and Hudgens (2010); where the line ends, after Gebski and others (2018)."
      >
        <p>
          The chance of having failed by each age, without assuming any shape; lives that are still running count for as
          long as they were watched, and those that came under watch late count from then on. The range is made on a
          scale (log-log) that keeps it between none and all. The line ends where one more failure would move it by more
          than {Math.round(100 * largestJump)} in 100.
        </p>
      </Definition>
      <Definition
        of="age-bands"
        formula={[
          maths`${indexed("q", "a")} = ${fraction(indexed("d", "a"), maths`${indexed("n", "a")} − ${fraction("1", "2")} ${indexed("w", "a")} + ${fraction("1", "2")} ${indexed("e", "a")}`)}`,
          maths`${indexed("r", "a")} = ${fraction(indexed("d", "a"), indexed("T", "a"))}`,
        ]}
        letters="in band a: d failed, n alive at its beginning, w lost sight of and e entered within it, T component-years lived"
        example={examples.ageBand}
        source="Actuarial life table: Cutler and Ederer (1958), Journal of Chronic Diseases 8, 699–712; range of each rate: Garwood (1936)."
      >
        <p>
          How often a component fails per year lived in each band of age (
          {ageBands.map(({ name }) => name.toLowerCase()).join(", ")}), and the share that fails within the band. Lives
          that leave or enter within a band count as half there for the share; the rate uses the days that they really
          lived.
        </p>
      </Definition>
      <Definition
        of="cumulative-hazard"
        formula={[
          maths`H ( t ) = ${over("∑", maths`${indexed("t", "i")} ≤ t`)} ${fraction(indexed("d", "i"), indexed("n", "i"))}`,
          maths`σ² = ${over("∑", maths`${indexed("t", "i")} ≤ t`)} ${fraction(indexed("d", "i"), raised(indexed("n", "i"), "2"))}`,
        ]}
        source="Nelson (1972), Technometrics 14, 945–966; Aalen (1978), Annals of Statistics 6, 701–726."
      >
        <p>
          How many failures one place in a machine would have seen by each age, had it been refilled at once after each.
          A line that bends upwards means wear, one that flattens means that early failures thin out.
        </p>
      </Definition>
    </>
  );
}

function FittedLives({ examples }: { readonly examples: ExampleWords }) {
  return (
    <>
      <Definition
        of="fitted-life"
        formula={[
          maths`F ( t ) = 1 − exp ( − ${raised(maths`( ${fraction("t", "η")} )`, "β")} )`,
          maths`ln L = ${over("∑", "failed")} ln h ( ${indexed("t", "i")} ) − ${over("∑", "all")} ( H ( ${indexed("t", "i")} ) − H ( ${indexed("e", "i")} ) )`,
        ]}
        letters="β: shape, η: scale, H(t) = (t ÷ η) to the power β, h its slope; t: age at which a life ended or was last seen, e: age at which it came under watch"
        example={examples.fittedLife}
        source="Meeker and Escobar (1998), Statistical Methods for Reliability Data, chapters 7, 8 and 11."
      >
        <p>
          A Weibull life, fitted by maximum likelihood to all lives of the component, those cut short and those that
          entered late included. The range of shape and scale is by likelihood: all values that explain the data not
          much worse than the best. Chances and ages of failure carry ranges made in the same way, or on the logit
          scale. “Wears out” or “fails early” is said only when the whole range of the shape lies above or below 1.
        </p>
        <p>
          It is refused, with the reason, where nobody was watched, where nothing failed, under {fewestFailuresForFit}{" "}
          failures, and where the data fix no single best fit, for example when all failures have the same age. A
          failure on the day of installation counts as at most {failedOnFirstDay.within} days old.
        </p>
      </Definition>
      <Definition
        of="fit-checks"
        formula={maths`AIC = 2 k − 2 ln L`}
        letters="k: number of parameters fitted, L: likelihood; the smaller fits better, and less than 2 apart says little"
        source="Akaike (1974), IEEE Transactions on Automatic Control 19, 716–723. Test by bands: Hjort (1990), Annals of Statistics 18, 1221–1258; Bagdonavičius and Nikulin (2011) (both from memory). At least 5 a band: common practice, no source."
      >
        <p>
          An exponential life (age makes no difference) and a lognormal one are fitted to the same lives and compared by
          Akaike’s criterion. Whether the Weibull follows the failures is tested in bands of age in which it expects
          equally many, at least {fewestPerBand} each.
        </p>
      </Definition>
    </>
  );
}

function RepeatFailures({ examples }: { readonly examples: ExampleWords }) {
  return (
    <>
      <Definition
        of="repeat-failures"
        formula={maths`M ( t ) = ${over("∑", maths`${indexed("t", "i")} ≤ t`)} ${fraction(indexed("d", "i"), indexed("n", "i"))}`}
        letters="d: failures at that age of the unit, n: units watched at that age. The variance adds, unit by unit, the square of what it had more than the mean"
        example={examples.repeats}
        source="Nelson (1988), Journal of Quality Technology 20, 24–35; Nelson (2003), Recurrent Events Data Analysis; Lawless and Nadeau (1995), Technometrics 37, 158–168."
      >
        <p>
          How many failures a unit has had on average by each age, repeats included: the mean cumulative function. Its
          range counts by unit, so it holds however the failures of one unit hang together.
        </p>
      </Definition>
      <Definition
        of="repeats-compared"
        formula={maths`U = ${over("∑", "i")} ${fraction(maths`${indexed("n", "1i")} ${indexed("n", "2i")}`, maths`${indexed("n", "1i")} + ${indexed("n", "2i")}`)} ( ${fraction(indexed("d", "1i"), indexed("n", "1i"))} − ${fraction(indexed("d", "2i"), indexed("n", "2i"))} )`}
        letters="over all ages with a failure; U divided by its standard error, which counts by unit, is held against the normal distribution"
        source="Cook, Lawless and Nadeau (1996), Biometrics 52, 557–571; differences at chosen ages: Doganaksoy and Nelson (1998), Lifetime Data Analysis 4, 117–133."
      >
        <p>
          One test over all ages of whether the units of one group fail more often than those of another, right also
          when some machines fail again and again; and the difference in failures per unit at a few ages.
        </p>
      </Definition>
    </>
  );
}
