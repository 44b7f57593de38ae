// Claims: a decided and proven job becomes the request to its payer, or the list of reasons why it cannot. Pure; the
// packet that is printed and sent is claim-packet.ts.
import type { ClaimAssembly } from "./claim";
import type { ClaimCase } from "./claim-case";
import { claimGrounds } from "./claim-grounds";
import { claimTasks } from "./claim-tasks";
import { repeatCheck } from "./repeat-check";

/**
 * What may still be added leaves a claim that is not ready; what nothing can mend blocks it.
 * Checked: tests/claims/assemble-claim.test.ts.
 */
export function assembleClaim(given: ClaimCase): ClaimAssembly {
  const { record, policy, evidence } = given;
  const { covered, amounts, filing, reasons } = claimGrounds(given);
  const { source } = covered;
  const tasks = claimTasks(given, covered, amounts);
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
      filing: { by: policy.clocks.filing.by, lastDay: filing.lastDay, daysLeft: filing.daysLeft },
      tasks,
      isReady: tasks.every((task) => task.state !== "missing"),
      warnings: evidence.warnings,
      repeat: repeatCheck(record, policy)?.decision,
    },
  };
}
