import type { Day } from "@/lib/calendar/day";
import type { CoverageAnswer, CoverSource, ItemDecision } from "@/lib/coverage/coverage-decision";
import type { JobRecord } from "@/lib/domain/job";
import { type PayItem, payItems } from "@/lib/domain/pay-item";
import type { Policy } from "@/lib/domain/policy";
import type { EvidenceCheck } from "@/lib/evidence/evidence-check";

/** Everything a claim is made from. */
export interface ClaimCase {
  readonly record: JobRecord;
  readonly decision: CoverageAnswer;
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
  const first = payItems.find((item) => isOurs(decision.items[item], policy));
  const source = first === undefined ? undefined : sourceOf(decision.items[first]);
  // A campaign and the policy it stands in are two requests; the first one that pays is this claim's.
  const items = payItems.filter((item) => {
    const of = decision.items[item];
    return isOurs(of, policy) && sourceOf(of)?.campaign === source?.campaign;
  });
  return { items, source };
}

/** Whether the policy pays any item, asked of many that pay none. */
export function coversAnything({ items }: CoverageAnswer, policy: Policy): boolean {
  return payItems.some((item) => isOurs(items[item], policy));
}

function isOurs(of: ItemDecision, { key, version }: Policy): boolean {
  return of.verdict === "covered" && of.by.policy === key && of.by.version === version;
}

function sourceOf(of: ItemDecision): CoverSource | undefined {
  return of.verdict === "covered" ? of.by : undefined;
}
