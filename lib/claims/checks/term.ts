import { dayInWords } from "@/lib/calendar/day-words";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import { itemNames } from "@/lib/coverage/describe-coverage";
import { jobCoverageFacts } from "@/lib/coverage/job-coverage-facts";
import type { PayItem } from "@/lib/domain/pay-item";
import type { DecisiveEvent } from "@/lib/domain/policy-start";
import { coveredByPolicy } from "../claim-case";
import { checkOf, type FilingCase, type FilingCheck, type Look, onUnit } from "./filing-case";

/**
 * Out of term on the day that counts. Payers count by the request by default, some by the completion: both are shown,
 * and the policy's own day decides. Source: a public trade forum; the service-claim message has a day for each.
 */
export function termChecked(filing: FilingCase): FilingCheck {
  const { given } = filing;
  const own = given.policy.decisiveEvent;
  const ours = coveredOn(filing, own);
  if (ours.length === 0)
    return checkOf("term", onUnit, [
      { wrong: `Nothing is covered on ${dayOf(filing, own)}: see the dates of the unit.` },
    ]);
  const others = (["reported", "completed"] as const).filter((event) => event !== own);
  return checkOf("term", onUnit, [
    { fine: `Covered on ${dayOf(filing, own)}, which this policy counts: ${names(ours)}.` },
    ...others.map((event) => otherwise(filing, event, ours)),
  ]);
}

function otherwise(filing: FilingCase, event: DecisiveEvent, ours: readonly PayItem[]): Look {
  const then = coveredOn(filing, event);
  const lost = ours.filter((item) => !then.includes(item));
  if (lost.length === 0) return { fine: `Covered on ${dayOf(filing, event)} as well.` };
  return {
    open: `Not covered if ${dayOf(filing, event)} counted: ${names(lost)}. Name the day that counts on the claim, with the page of the policy.`,
  };
}

function coveredOn({ given, file }: FilingCase, decisiveEvent: DecisiveEvent): readonly PayItem[] {
  const policy = { ...given.policy, decisiveEvent };
  const decision =
    decisiveEvent === given.policy.decisiveEvent
      ? given.decision
      : decideCoverage(jobCoverageFacts(given.record, file), [policy]);
  return coveredByPolicy({ decision, policy }).items;
}

function dayOf({ given: { record } }: FilingCase, event: DecisiveEvent): string {
  const { requestedOn, firstVisitOn, completedOn } = record.job;
  switch (event) {
    case "reported":
      return `the day of the call, ${dayInWords(requestedOn ?? firstVisitOn ?? completedOn)}`;
    case "visit":
      return `the first visit, ${dayInWords(firstVisitOn ?? completedOn)}`;
    case "completed":
      return `the completion, ${dayInWords(completedOn)}`;
  }
}

function names(items: readonly PayItem[]): string {
  return items.map((item) => itemNames[item].toLowerCase()).join(", ");
}
