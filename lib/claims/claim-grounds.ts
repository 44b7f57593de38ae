import { decideFiling, type FilingDecision } from "@/lib/coverage/decide-filing";
import { blockReasons } from "./block-reasons";
import type { BlockReason } from "./claim";
import { type ClaimAmounts, claimAmounts } from "./claim-amounts";
import { type ClaimCase, type CoveredByPolicy, coveredByPolicy } from "./claim-case";

/** What decides whether a claim can be made and what it would ask for, before anything of it is put into words. */
export interface ClaimGrounds {
  readonly covered: CoveredByPolicy;
  readonly amounts: ClaimAmounts;
  readonly filing: FilingDecision;
  /** What nothing can mend; a claim can be made where there is none. */
  readonly reasons: readonly BlockReason[];
}

export function claimGrounds(given: ClaimCase): ClaimGrounds {
  const { record, policy, asOf, holidays } = given;
  const covered = coveredByPolicy(given);
  const amounts = claimAmounts(record, covered.items, policy);
  const filing = decideFiling({
    clock: policy.clocks.filing,
    completedOn: record.job.completedOn,
    actOn: asOf,
    holidays,
  });
  return { covered, amounts, filing, reasons: blockReasons(given, covered, amounts, filing) };
}
