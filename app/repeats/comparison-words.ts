import type { GroupComparison, Ratio } from "@/lib/failures/compare-groups";
import type { ComparisonVerdict } from "@/lib/failures/comparison-verdict";
import { capitalised } from "@/lib/format/capitalised";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";
import { describeEstimate, formatEstimate } from "@/lib/format/format-estimate";
import { formatProbability } from "@/lib/format/format-probability";

/** What a ratio is said to be times of. */
const often = "as often";

/** One honest sentence: the fixed phrase, and the numbers that it rests on. */
export function comparisonFinding(
  { first, second, likeAges }: GroupComparison,
  { verdict }: ComparisonVerdict,
): string {
  const numbers = ratioWords(likeAges, second.name);
  if (verdict === "too few to judge")
    return `${capitalised(first.name)} and ${second.name}: too few failures to judge, ${formatCount(first.life.failures)} and ${formatCount(second.life.failures)}`;
  if (verdict === "no sign of a difference")
    return `${capitalised(first.name)} and ${second.name}: no sign of a difference at like ages, ${numbers}`;
  return `${capitalised(first.name)}: ${verdict} ${second.name} at like ages, ${numbers}`;
}

export function ratioWords(ratio: Ratio, second: string): string {
  switch (ratio.kind) {
    case "estimate":
      return describeEstimate(formatEstimate(ratio.estimate, { against: often }));
    case "no-upper-limit":
      return `at least ${formatDecimal(ratio.low, 1)} times ${often}; none failed among ${second}, so there is no upper limit`;
    case "no-events":
      return "nothing failed in either group, so there is no ratio";
    case "no-exposure":
      return "one of the groups was not watched for any time, so there is no ratio";
    case "no-shared-ages":
      return "the groups were never watched at the same ages, so there is no ratio";
  }
}

/** The test that takes each unit as one, over all ages at once. */
export function repeatsWords({ repeats }: GroupComparison): string {
  if (repeats.kind === "not-comparable") return "No failure happened while units of both groups were watched.";
  return `Taking each unit as one, over all ages: a difference as large would come by luck with probability ${formatProbability(repeats.probability)}.`;
}

/** What the sentence at the top was decided by. */
export function verdictBasis({ probability, byUnit }: ComparisonVerdict): string {
  const test = byUnit
    ? "Some units fail again and again, so the test that takes each unit as one had to agree with the exact one"
    : "Decided by the exact test at like ages";
  const number = probability === undefined ? "" : ` (probability ${formatProbability(probability)})`;
  return `${test}${number}: under 0.05 is called probably, under 0.002 clearly.`;
}

/** Failures that had nothing to be compared with. */
export function elsewhereWords({ eventsElsewhere }: GroupComparison): string | undefined {
  if (eventsElsewhere === 0) return undefined;
  return `${formatCounted(eventsElsewhere, "failure")} of group 1 happened at ages at which group 2 was never watched; the ratio at like ages leaves them out.`;
}
