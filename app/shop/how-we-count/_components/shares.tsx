import { describeShare } from "@/lib/format/format-share";
import type { ShareMethod } from "@/lib/statistics/estimate";
import { sisonGlaz } from "@/lib/statistics/intervals/sison-glaz";
import { shareEstimate, sharesOfWhole } from "@/lib/statistics/share-estimate";
import { both, found, fraction, indexed, maths, raised, root } from "../_maths/maths";
import { Definition } from "./definition";

export function Shares() {
  return (
    <>
      <OneShare />
      <SharesTogether />
    </>
  );
}

function OneShare() {
  return (
    <>
      <Definition
        of="wilson"
        formula={maths`${fraction(maths`${found("p")} + ${fraction(raised("z", "2"), "2 n")} ± z ${root(maths`${fraction(maths`${found("p")} ( 1 − ${found("p")} )`, "n")} + ${fraction(raised("z", "2"), maths`4 ${raised("n", "2")}`)}`)}`, maths`1 + ${fraction(raised("z", "2"), "n")}`)}`}
        letters="p̂ = x ÷ n: the share seen, x of n; z: 1.96 at 95 in 100"
        example={`3 of 12: ${worked("wilson")}.`}
        source="Wilson (1927), Journal of the American Statistical Association 22, 209–212. Corrected for continuity: Newcombe (1998), Statistics in Medicine 17, 857–872. Agresti and Coull (1998), The American Statistician 52, 119–126."
      >
        <p>
          For so many of so many, such as how often a symptom turned out to be one component: the Wilson (score) range.
          It stays sensible at none and at all, and on average holds the truth as often as it says.
        </p>
      </Definition>
      <Definition
        of="clopper-pearson"
        formula={[maths`low = ${beta("α/2")} ( x , n − x + 1 )`, maths`high = ${beta("1−α/2")} ( x + 1 , n − x )`]}
        letters="B⁻¹: quantile of the beta distribution; α: 1 less the level"
        example={`3 of 12: ${worked("clopper-pearson")}.`}
        source="Clopper and Pearson (1934), Biometrika 26, 404–413."
      >
        <p>
          The exact range. It never holds the truth less often than it says, at the price of width; it is used where
          that is asked for. Its shorter relative, with the seen count weighing half, is called mid-P.
        </p>
      </Definition>
      <Definition
        of="jeffreys"
        formula={[
          maths`low = ${beta("α/2")} ( x + ½ , n − x + ½ )`,
          maths`high = ${beta("1−α/2")} ( x + ½ , n − x + ½ )`,
        ]}
        letters="with x = 0 the lower end is 0, with x = n the upper end is 1"
        example={`3 of 12: ${worked("jeffreys")}.`}
        source="Brown, Cai and DasGupta (2001), Statistical Science 16, 101–133."
      >
        <p>
          What one would believe of the share having started from next to nothing: half an event for, half an event
          against. Right on average; the range by likelihood is close to it.
        </p>
      </Definition>
    </>
  );
}

function SharesTogether() {
  return (
    <>
      <Definition
        of="goodman"
        formula={maths`${raised("z", "2")} = ${both("χ", "1", "2")} ( 1 − ${fraction("α", "k")} )`}
        letters="in Wilson’s formula, for k shares of one whole"
        example={`10, 20 and 5 of 35: ${togetherExample}.`}
        source="Goodman (1965), Technometrics 7, 247–254."
      >
        <p>
          Where several shares of one whole stand side by side, their ranges are wide enough to hold all together, not
          only each by itself.
        </p>
      </Definition>
      <Definition
        of="sison-glaz"
        formula={maths`${indexed(found("p"), "i")} − ${fraction("c", "n")} ≤ ${indexed("p", "i")} ≤ ${indexed(found("p"), "i")} + ${fraction("c + 2 γ", "n")}`}
        letters="c: the smallest whole number that holds all shares together at the level; γ: the fraction of a step that makes it exact"
        example={`10, 20 and 5 of 35: ${sisonExample}.`}
        source="Sison and Glaz (1995), Journal of the American Statistical Association 90, 366–369; May and Johnson (2000), Journal of Statistical Software 5(6)."
      >
        <p>
          The same for many shares at once: every one gets the same arm, which is shorter than Goodman’s when there are
          many. Not meant for a handful of cases.
        </p>
      </Definition>
    </>
  );
}

const beta = (at: string) => both("B", at, "−1");

function worked(method: ShareMethod): string {
  const { point, lo, hi } = shareEstimate({ events: 3, trials: 12, level: 0.95, method });
  return describeShare(point, lo, hi);
}

const counts = [10, 20, 5];
const togetherExample = sharesOfWhole({ counts, level: 0.95 })
  .map(({ point, lo, hi }) => describeShare(point, lo, hi))
  .join("; ");
const sisonExample = sisonGlaz({ counts, confidence: 0.95 })
  .map(({ point, low, high }) => describeShare(point, low, high))
  .join("; ");
