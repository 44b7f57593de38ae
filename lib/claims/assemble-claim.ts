// Claims: a decided and proven job becomes the request to its payer, or the list of reasons why it cannot. Pure; the
// packet that is printed and sent is claim-packet.ts.
import { decideFiling } from "@/lib/coverage/decide-filing";
import { blockReasons } from "./block-reasons";
import type { ClaimAssembly } from "./claim";
import { claimAmounts } from "./claim-amounts";
import { type ClaimCase, coveredByPolicy } from "./claim-case";
import { claimTasks } from "./claim-tasks";
import { repeatCheck } from "./repeat-check";

/**
 * What may still be added leaves a claim that is not ready; what nothing can mend blocks it.
 * Checked: tests/claims/assemble-claim.test.ts.
 */
export function assembleClaim(given: ClaimCase): ClaimAssembly {
  const { record, policy, evidence, asOf, holidays } = given;
  const { items, source } = coveredByPolicy(given);
  const amounts = claimAmounts(record, items, policy);
  const { filing: clock } = policy.clocks;
  const filing = decideFiling({ clock, completedOn: record.job.completedOn, actOn: asOf, holidays });
  const tasks = claimTasks(given, amounts);
  const reasons = blockReasons(given, amounts, filing);
  if (reasons.length > 0 || source === undefined || filing.kind === "late") return { kind: "blocked", reasons, tasks };
  return {
    kind: "claim",
    claim: {
      jobNumber: record.job.jobNumber,
      source,
      currency: policy.currency,
      lines: amounts.lines,
      deductions: amounts.deductions,
      totalCents: amounts.totalCents,
      filing: { by: clock.by, lastDay: filing.lastDay, daysLeft: filing.daysLeft },
      tasks,
      isReady: tasks.every((task) => task.state !== "missing"),
      warnings: evidence.warnings,
      repeat: repeatCheck(record, policy)?.decision,
    },
  };
}
