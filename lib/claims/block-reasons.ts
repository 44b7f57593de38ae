import { countOf, dayInWords } from "@/lib/calendar/day-words";
import type { FilingDecision } from "@/lib/coverage/decide-filing";
import { describeItem } from "@/lib/coverage/describe-coverage";
import { causes } from "@/lib/domain/cause";
import type { BlockReason } from "./claim";
import type { ClaimAmounts } from "./claim-amounts";
import type { ClaimCase, CoveredByPolicy } from "./claim-case";
import { repeatCheck } from "./repeat-check";

/** Everything that keeps this job from becoming a claim, whatever is added to it. Each says why. */
export function blockReasons(
  given: ClaimCase,
  covered: CoveredByPolicy,
  amounts: ClaimAmounts,
  filing: FilingDecision,
): readonly BlockReason[] {
  const found = [
    ...statusReasons(given),
    ...causeReasons(given),
    ...coverageReasons(given, covered),
    ...evidenceReasons(given),
    ...repeatReasons(given),
    ...filingReasons(filing),
    ...currencyReasons(given),
  ];
  if (found.length > 0 || amounts.totalCents > 0 || amounts.unknown.length > 0) return found;
  return [
    {
      code: "nothing_to_pay",
      sentence: "By this policy nothing is payable for what was done: no covered amount is above zero.",
    },
  ];
}

function statusReasons({ record }: ClaimCase): readonly BlockReason[] {
  const { status } = record.job;
  if (status === "closed") return [];
  return [{ code: "not_closed", sentence: `The job is ${status}, not closed. Only a closed job can become a claim.` }];
}

function causeReasons({ record, evidence, decision, policy }: ClaimCase): readonly BlockReason[] {
  const { cause } = record.job;
  const { name, kind, borneBy } = causes[cause];
  if (kind === "outside") {
    return [
      {
        code: "outside_cause",
        sentence: `The cause lies outside the part: ${name}. Usually borne by: ${borneBy}. The part did not fail, so there is nothing to claim.`,
      },
    ];
  }
  if (evidence.kind === "outside_cause") return [{ code: "outside_cause", sentence: evidence.verdict }];
  if (kind === "component") return [];
  const paysDiagnosis = policy.pay.diagnosis.kind === "flat" && decision.items.diagnosis.verdict === "covered";
  if (cause === "no_fault_found" && paysDiagnosis) return [];
  if (cause === "no_fault_found") {
    return [
      { code: "no_fault_found", sentence: "No fault was found, and this policy pays no visit without a repair." },
    ];
  }
  return [
    { code: "cause_not_determined", sentence: "The cause was not determined. Enter the cause that the readings show." },
  ];
}

function coverageReasons({ decision, policy }: ClaimCase, { items }: CoveredByPolicy): readonly BlockReason[] {
  if (items.length > 0) return [];
  const { parts } = decision.items;
  switch (decision.verdict) {
    case "covered":
      return [
        {
          code: "policy_mismatch",
          sentence: `${policy.name}, version ${policy.version}, is not the policy that covers this job.`,
        },
      ];
    case "not_covered":
    case "needs_evidence":
    case "needs_local_law":
    case "invalid_data":
      return [{ code: decision.verdict, sentence: `Parts: ${describeItem(parts)}. ${decision.statutory.sentence}` }];
  }
}

/** A visit without a repair claims no failure, so nothing can contradict one. */
function evidenceReasons({ record, evidence }: ClaimCase): readonly BlockReason[] {
  if (evidence.kind !== "contradicted" || causes[record.job.cause].kind !== "component") return [];
  return [{ code: "evidence_contradicted", sentence: evidence.verdict }];
}

function repeatReasons({ record, policy }: ClaimCase): readonly BlockReason[] {
  const repeat = repeatCheck(record, policy);
  if (repeat?.decision.kind !== "repeat_within_window") return [];
  const until = dayInWords(repeat.decision.windowLastDay);
  return [
    {
      code: "repeat_within_window",
      sentence: `The same trouble as job ${repeat.earlierJob}, reported inside its repeat window (through ${until}): the servicer bears it.`,
    },
  ];
}

function filingReasons(filing: FilingDecision): readonly BlockReason[] {
  if (filing.kind === "in_window") return [];
  return [
    {
      code: "filing_window_over",
      sentence: `The filing window ended on ${dayInWords(filing.lastDay)}, ${countOf(filing.daysLate, "day")} ago.`,
    },
  ];
}

function currencyReasons({ record, policy }: ClaimCase): readonly BlockReason[] {
  const amounts = [...record.partLines.map((line) => line.unitCost), record.job.labour, record.job.trip];
  const other = amounts.find((amount) => amount !== undefined && amount.currency !== policy.currency);
  if (other === undefined) return [];
  return [
    {
      code: "other_currency",
      sentence: `An amount of the job is in ${other.currency}, but the policy pays in ${policy.currency}. Enter the amount in ${policy.currency}.`,
    },
  ];
}
