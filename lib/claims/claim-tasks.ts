import { describeCoverage, describeItem } from "@/lib/coverage/describe-coverage";
import { causes } from "@/lib/domain/cause";
import { componentOf } from "@/lib/domain/components";
import type { PartLine } from "@/lib/domain/job";
import type { EvidenceItem } from "@/lib/evidence/evidence-check";
import { authorizationCheck } from "./authorization-check";
import type { ClaimTask, TaskKey } from "./claim";
import type { ClaimAmounts } from "./claim-amounts";
import { type ClaimCase, type CoveredByPolicy, coveredByPolicy } from "./claim-case";
import { centsInWords } from "./money-words";
import { repeatCheck } from "./repeat-check";

/** The six things a claim is made of, each in place, missing with what would fix it, or not asked for here. */
export function claimTasks(given: ClaimCase, amounts: ClaimAmounts): readonly ClaimTask[] {
  const covered = coveredByPolicy(given);
  return [
    unitAndSerial(given),
    coverageWindow(given, covered),
    faultAndRemedy(given),
    evidenceTask("readings", given, (key) => key.startsWith("check:") || key === "reading_log" || key === "proof"),
    evidenceTask("photos", given, (key) => key.startsWith("photo:") || key === "part_labels"),
    partsAndLabour(given, covered, amounts),
  ];
}

function unitAndSerial({ record }: ClaimCase): ClaimTask {
  const { model, serial } = record.unit;
  const fixes = [
    ...(model.trim() === "" ? ["Read the model with its suffix from the rating plate."] : []),
    ...(serial === undefined ? ["Read the serial from the rating plate and enter it."] : []),
  ];
  return task(
    "unit_and_serial",
    [`${record.unit.maker} ${model}`, ...(serial === undefined ? [] : [`Serial ${serial}`])],
    fixes,
  );
}

/** A start without its paper is still a start, but payers ask for the paper. A campaign asks for none. */
function coverageWindow({ decision, record }: ClaimCase, { items, source }: CoveredByPolicy): ClaimTask {
  if (items.length === 0) return task("coverage_window", [], [`Parts: ${describeItem(decision.items.parts)}.`]);
  const hasReceipt = record.attachments.some((attachment) => attachment.subject === "receipt");
  const isAsked = source?.campaign === undefined && source?.payerKind !== "own_guarantee";
  const fixes = isAsked && !hasReceipt ? ["Attach proof of purchase: a receipt, delivery note or closing paper."] : [];
  return task("coverage_window", describeCoverage(decision).arithmetic, fixes);
}

function faultAndRemedy({ record, policy }: ClaimCase): ClaimTask {
  const { complaint, causeNote, correction, component, cause } = record.job;
  const repeat = repeatCheck(record, policy);
  const fixes = [
    ...(complaint.trim() === "" ? ["Write the complaint in the customer's words."] : []),
    ...(causeNote.trim() === "" ? ["Write the cause: the failed part, how it failed, and the proof."] : []),
    ...(correction.trim() === "" ? ["Write the correction: what was replaced and the test after it."] : []),
    ...(component === undefined ? ["Name the component that failed."] : []),
  ];
  const unrelated =
    repeat?.decision.kind === "unrelated"
      ? [`Job ${repeat.earlierJob} lies inside the repeat window: the cause line must say why the two are unrelated.`]
      : [];
  const cannotCompare =
    repeat?.decision.kind === "cannot_compare"
      ? [`Job ${repeat.earlierJob} lies inside the repeat window: name component and symptom on both jobs.`]
      : [];
  const name = component === undefined ? [] : [componentOf(component)?.name ?? component];
  return task("fault_and_remedy", [...name, causes[cause].name, ...unrelated], [...fixes, ...cannotCompare]);
}

function evidenceTask(key: TaskKey, { evidence }: ClaimCase, belongs: (itemKey: string) => boolean): ClaimTask {
  const items = evidence.items.filter((item) => belongs(item.key));
  const applying = items.filter((item) => item.state !== "does_not_apply");
  if (applying.length === 0) return { key, state: "does_not_apply", found: [], fixes: [] };
  const found = applying.filter((item) => item.state === "in_place").map((item) => item.label);
  return task(key, found, applying.filter((item) => item.state === "missing").map(fixOf));
}

function fixOf({ label, whatWouldFixIt, canStillBeHad }: EvidenceItem): string {
  return `${label}: ${whatWouldFixIt}${canStillBeHad ? "" : " It cannot be had after the repair."}`;
}

function partsAndLabour(given: ClaimCase, { items }: CoveredByPolicy, amounts: ClaimAmounts): ClaimTask {
  const { record, policy } = given;
  const fitted = record.partLines.filter((line) => line.role === "fitted");
  const authorization = authorizationCheck(record, policy, amounts);
  const fixes = [
    ...(items.includes("parts") ? fitted.flatMap(invoiceFixes) : []),
    ...amounts.unknown,
    ...(authorization.kind === "missing" ? [authorization.fix] : []),
  ];
  const found = [
    ...amounts.lines.map((line) => `${line.description}: ${centsInWords(line.cents, policy.currency)} (${line.basis})`),
    ...(authorization.kind === "in_place" ? [authorization.found] : []),
  ];
  if (found.length === 0 && fixes.length === 0)
    return { key: "parts_and_labour", state: "does_not_apply", found, fixes };
  return task("parts_and_labour", found, fixes);
}

/** Payers reject on any mismatch of part, distributor, invoice or cost, so each must be there to be compared. */
function invoiceFixes(line: PartLine): readonly string[] {
  const name = `Part line ${line.line}`;
  return [
    ...(line.partNumber.trim() === "" ? [`${name}: enter the exact part number of the invoice.`] : []),
    ...(line.distributor === undefined ? [`${name}: name the distributor.`] : []),
    ...(line.invoiceNumber === undefined ? [`${name}: join it to the distributor's invoice.`] : []),
    ...(line.unitCost.cents === 0 ? [`${name}: enter the cost on the invoice.`] : []),
  ];
}

function task(key: TaskKey, found: readonly string[], fixes: readonly string[]): ClaimTask {
  return { key, state: fixes.length === 0 ? "in_place" : "missing", found, fixes };
}
