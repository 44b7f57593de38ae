import { type PayItem, payItems } from "@/lib/domain/pay-item";
import type { CoverageAnswer, ItemDecision } from "./coverage-decision";

export interface ChangedItem {
  readonly item: PayItem;
  readonly before: ItemDecision;
  readonly after: ItemDecision;
}

/** The pay items on which two decisions of one job differ: in verdict, in reason or in who pays. */
export function changedItems(before: CoverageAnswer, after: CoverageAnswer): readonly ChangedItem[] {
  return payItems.flatMap((item) => {
    const pair = { item, before: before.items[item], after: after.items[item] };
    return isSame(pair.before, pair.after) ? [] : [pair];
  });
}

function isSame(one: ItemDecision, other: ItemDecision): boolean {
  return one.verdict === other.verdict && reasonOf(one) === reasonOf(other) && payerOf(one) === payerOf(other);
}

function reasonOf(decision: ItemDecision): string | undefined {
  if (decision.verdict === "covered") return undefined;
  return decision.verdict === "invalid_data" ? decision.problem : decision.reason;
}

/** Another version of the same policy that decides alike changes nothing for anybody. */
function payerOf(decision: ItemDecision): string | undefined {
  return decision.verdict === "covered" ? `${decision.by.policy}/${decision.by.campaign ?? ""}` : undefined;
}
