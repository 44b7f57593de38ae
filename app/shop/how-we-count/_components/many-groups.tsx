import { formatDecimal } from "@/lib/format/format-decimal";
import { adjustedPValues } from "@/lib/statistics/multiplicity/adjusted-p-values";
import { shrunkenRate } from "@/lib/statistics/multiplicity/shrunken-rate";
import { fraction, indexed, maths, raised } from "../_maths/maths";
import { Definition } from "./definition";

export function ManyGroups() {
  return (
    <>
      <Definition
        of="shrinkage"
        formula={maths`${fraction("d + a", "T + b")}`}
        letters="a, b: shape and rate of the gamma distribution that all groups’ rates follow best; the range is that of a gamma distribution of shape d + a and rate T + b"
        example={`3 failures in 20 unit-years are ${rawExample} in 100 a year; in a fleet whose rates lie around 5 in 100 (a = 4, b = 80) they count as ${shrunkExample}.`}
        source="Clayton and Kaldor (1987), Biometrics 43, 671–681; Gaver and O’Muircheartaigh (1987), Technometrics 29, 1–15."
      >
        <p>
          Of many groups the smallest have the highest and the lowest rates, by luck. A group’s own rate is drawn
          towards those of all groups: far where it has little time watched, hardly at all where it has much (empirical
          Bayes). It stands beside the plain rate and never in its place. The doubt of a and b themselves is not in its
          range.
        </p>
      </Definition>
      <Definition
        of="many-tests"
        formula={maths`${indexed("q", "(i)")} = ${indexed("min", "j ≥ i")} ${fraction(maths`m ${indexed("p", "(j)")}`, "j")}`}
        letters="p: the m probabilities in rising order"
        example={`Probabilities of 0.001, 0.02, 0.03 and 0.6 become ${adjusted}.`}
        source="Benjamini and Hochberg (1995), Journal of the Royal Statistical Society B 57, 289–300."
      >
        <p>
          Of a hundred comparisons of equal groups, five stand out at 95 in 100 by chance. The adjusted value q says
          what share of those that stand out this far or further would be false alarms.
        </p>
      </Definition>
      <Definition
        of="funnel"
        formula={maths`${fraction(maths`${raised("P", "−1")} ( u ; E )`, "E")}`}
        letters="P⁻¹: Poisson quantile for E expected failures, at u = 0.025 and 0.975 (dashed), 0.001 and 0.999 (solid)"
        source="Spiegelhalter (2005), Statistics in Medicine 24, 1185–1202; groups that differ more than chance everywhere: Spiegelhalter (2005), Quality and Safety in Health Care 14, 347–351."
      >
        <p>
          How far a group may lie from the fleet by chance alone, which is wide for small groups and narrow for large
          ones. Where all groups differ more than chance would make them, the limits are widened, and the page says so.
        </p>
      </Definition>
    </>
  );
}

const per100 = (rate: number) => formatDecimal(100 * rate, 0);
const rawExample = per100(3 / 20);
const drawn = shrunkenRate({ events: 3, exposure: 20, prior: { shape: 4, rate: 80 }, confidence: 0.95 });
const shrunkExample = `${per100(drawn.point)} (${per100(drawn.low)} to ${per100(drawn.high)})`;
const adjusted = adjustedPValues([0.001, 0.02, 0.03, 0.6], "benjamini-hochberg")
  .map((q) => formatDecimal(q, 3))
  .join(", ");
