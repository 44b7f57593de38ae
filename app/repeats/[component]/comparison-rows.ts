import type { GroupComparison, Ratio } from "@/lib/failures/compare-groups";
import type { RateGroup } from "@/lib/figures/rate-rows";
import type { Estimate } from "@/lib/statistics/estimate";
import { ratioWords } from "../comparison-words";

/** One way to set the two rates against each other. */
export interface RatioRow {
  readonly key: string;
  readonly label: string;
  readonly outcome:
    | { readonly kind: "estimate"; readonly estimate: Estimate }
    | { readonly kind: "none"; readonly why: string };
  /** Of the exact test; undefined where there is none that knows the doubt of both groups. */
  readonly probability: number | undefined;
}

export function ratioRows({ crude, likeAges, observedExpected, second }: GroupComparison): readonly RatioRow[] {
  const row = (key: string, label: string, ratio: Ratio): RatioRow => ({
    key,
    label,
    outcome:
      ratio.kind === "estimate"
        ? { kind: "estimate", estimate: ratio.estimate }
        : { kind: "none", why: ratioWords(ratio, second.name) },
    probability: ratio.kind === "estimate" || ratio.kind === "no-upper-limit" ? ratio.pValue : undefined,
  });
  return [
    row("like-ages", "At like ages", likeAges),
    {
      key: "expected",
      label: "Seen over expected",
      outcome:
        observedExpected.kind === "estimate"
          ? observedExpected
          : { kind: "none", why: "nothing would be expected at the rates of the second group" },
      probability: undefined,
    },
    row("crude", "All ages in one", crude),
  ];
}

export function rateGroups({ first, second }: GroupComparison): RateGroup[] {
  return [first, second].flatMap(({ name, rate }, i) =>
    rate.kind === "rate" ? [{ key: String(i), label: `${i + 1} ${name}`, estimate: rate.estimate }] : [],
  );
}
