import type { Day } from "@/lib/calendar/day";
import type { CoverageDecision, CoverSource } from "@/lib/coverage/coverage-decision";
import type { JobRecord } from "@/lib/domain/job";
import { type PayItem, payItems } from "@/lib/domain/pay-item";
import type { Policy } from "@/lib/domain/policy";
import type { EvidenceCheck } from "@/lib/evidence/evidence-check";

/** Everything a claim is made from. */
export interface ClaimCase {
  readonly record: JobRecord;
  readonly decision: CoverageDecision;
  readonly evidence: EvidenceCheck;
  /** The policy version that is asked to pay: one of those the decision names. */
  readonly policy: Policy;
  /** The day on which the claim is put together; the filing window is counted against it. */
  readonly asOf: Day;
  /** Only used where the policy's filing window rolls to a business day. */
  readonly holidays: ReadonlySet<Day>;
}

/** The pay items that this policy covers, with the campaign in it where one does. */
export interface CoveredByPolicy {
  readonly items: readonly PayItem[];
  readonly source: CoverSource | undefined;
}

export function coveredByPolicy({ decision, policy }: Pick<ClaimCase, "decision" | "policy">): CoveredByPolicy {
  const covered = payItems.flatMap((item) => {
    const of = decision.items[item];
    const isOurs = of.verdict === "covered" && of.by.policy === policy.key && of.by.version === policy.version;
    return isOurs ? [{ item, source: of.by }] : [];
  });
  const source = covered[0]?.source;
  // A campaign and the policy it stands in are two requests; the first one that pays is this claim's.
  const items = covered.filter((entry) => entry.source.campaign === source?.campaign).map((entry) => entry.item);
  return { items, source };
}
