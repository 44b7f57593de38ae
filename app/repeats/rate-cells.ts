import type { AgainstAges } from "@/lib/failures/against-ages";
import type { GroupRate } from "@/lib/failures/failure-rates";
import { formatCount } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";
import type { EstimateMethod } from "@/lib/statistics/estimate";
import { gradeOf } from "@/lib/statistics/estimate-grade";
import { methodName } from "./method-name";

/** One group as text for the table that stands in for the drawing: all its digits, never the point alone. */
export interface RateCells {
  readonly events: string;
  readonly unitYears: string;
  readonly rate: string;
  readonly low: string;
  readonly high: string;
  /** How many times what other machines of the kind had at the same ages; "–" where there are none to compare with. */
  readonly likeAges: string;
  /** How much the number can bear, and how its range was made. */
  readonly evidence: string;
}

export function rateCells(group: GroupRate): RateCells {
  if (group.kind === "no-exposure") {
    return {
      events: formatCount(group.events),
      unitYears: "0",
      rate: "–",
      low: "–",
      high: "–",
      likeAges: "–",
      evidence: "no exposure",
    };
  }
  const { events, n, point, lo, hi, method } = group.estimate;
  return {
    events: formatCount(events),
    unitYears: formatDecimal(n, 1),
    rate: formatDecimal(100 * point, 2),
    low: formatDecimal(100 * lo, 2),
    high: formatDecimal(100 * hi, 2),
    likeAges: ratioWords(group.likeAges),
    evidence: `${gradeOf(group.estimate)}; ${methodName(method)}${bunched(method)}`,
  };
}

/** "1.8 (1.1 to 2.9)": counted over what other machines of the kind had at the same ages. */
function ratioWords(likeAges: AgainstAges): string {
  if (likeAges.kind !== "ratio") return "–";
  const { point, lo, hi } = likeAges.estimate;
  return `${formatDecimal(point, 1)} (${formatDecimal(lo, 1)} to ${formatDecimal(hi, 1)})`;
}

function bunched(method: EstimateMethod): string {
  return method === "poisson-robust" ? ", wider because the same units fail again" : "";
}
