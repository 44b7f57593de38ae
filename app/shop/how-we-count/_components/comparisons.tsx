import { clearly, probably } from "@/lib/failures/comparison-verdict";
import { formatDecimal } from "@/lib/format/format-decimal";
import { describeEstimate, formatEstimate } from "@/lib/format/format-estimate";
import { observedExpectedEstimate, rateRatioEstimate } from "@/lib/statistics/ratio-estimate";
import { fraction, indexed, maths, over } from "../_maths/maths";
import { Definition } from "./definition";

export function Comparisons() {
  return (
    <>
      <Definition
        of="ratio"
        formula={[
          maths`ρ = ${fraction(maths`${indexed("d", "1")} / ${indexed("T", "1")}`, maths`${indexed("d", "2")} / ${indexed("T", "2")}`)}`,
          maths`${indexed("d", "1")} ∼ Bin ( ${indexed("d", "1")} + ${indexed("d", "2")} , ${fraction(maths`ρ ${indexed("T", "1")}`, maths`ρ ${indexed("T", "1")} + ${indexed("T", "2")}`)} )`,
        ]}
        letters="d: failures, T: unit-years, 1: the group, 2: what it is held against"
        example={`14 failures in 96 unit-years against 310 in 4,100: ${ratioExample}.`}
        source="Przyborowski and Wilenski (1940), Biometrika 31, 313–323; Fay (2010), R Journal 2(1), 53–58."
      >
        <p>
          One rate divided by another, with an exact range of its own. Of all failures of both, the share that fell to
          the group says how many times as often it fails. Whether two ranges overlap is not the same question, so it is
          never used to compare.
        </p>
      </Definition>
      <Definition
        of="observed-expected"
        formula={[maths`${fraction("O", "E")}`, maths`E = ${over("∑", "a")} ${indexed("r", "a")} ${indexed("T", "a")}`]}
        letters="O: failures seen; r: rate of the rest of the fleet at age a; T: unit-years of the group at that age"
        example={`14 failures where 7.8 were expected: ${expectedExample}.`}
        source="Indirect standardisation; Breslow and Day (1987), Statistical Methods in Cancer Research, volume II, section 2.3."
      >
        <p>
          Failures seen, divided by the failures that the rest of the fleet would have had at the same ages. A group is
          never part of what it is held against. The range is the exact one of the failures seen; the expected number is
          taken as known, since it comes from far more data than the group has.
        </p>
      </Definition>
      <Definition
        of="ratio-at-like-ages"
        formula={[
          maths`D = ${over("∑", "a")} ${indexed("d", "1a")}`,
          maths`${indexed("d", "1a")} ∼ Bin ( ${indexed("d", "1a")} + ${indexed("d", "2a")} , ${fraction(maths`ρ ${indexed("T", "1a")}`, maths`ρ ${indexed("T", "1a")} + ${indexed("T", "2a")}`)} )`,
        ]}
        letters="a: ages at which both groups were watched; D: the count whose limits give those of ρ"
        source="Breslow and Day (1987), volume II, section 3.4; Martin and Austin (1996), Epidemiology 7, 29–33 (both from memory)."
      >
        <p>
          One ratio that holds at every age, for two groups of which neither is large enough to be taken as known. It
          carries the doubt of both. Ages at which only one of them was watched say nothing about the ratio and are left
          out.
        </p>
      </Definition>
      <Definition
        of="verdict"
        source="Wording and limits are this program’s own; the two limits are those usual for funnel plots (Spiegelhalter 2005)."
      >
        <p>
          <strong>Clearly</strong> above or below: a difference this large would come about by chance less than{" "}
          {formatDecimal(1000 * clearly, 0)} times in 1,000. <strong>Probably</strong>: less than{" "}
          {formatDecimal(100 * probably, 0)} times in 100. Otherwise <strong>no sign of a difference</strong>, which is
          not the same as no difference. Where the same units fail again and again, a test that takes each unit as one
          has to agree. Thin comparisons get none of these words: <strong>too few to judge</strong>.
        </p>
      </Definition>
    </>
  );
}

const ratio = rateRatioEstimate({
  group: { events: 14, exposure: 96 },
  rest: { events: 310, exposure: 4100 },
  level: 0.95,
});
const ratioExample = ratio.kind === "estimate" ? describeEstimate(formatEstimate(ratio.estimate)) : "";
const expectedExample = describeEstimate(
  formatEstimate(observedExpectedEstimate({ observed: 14, expected: 7.8, level: 0.95 }), {
    against: "what its ages predict",
  }),
);
