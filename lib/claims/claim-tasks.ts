import { describeCoverage, describeItem } from "@/lib/coverage/describe-coverage";
import { causes } from "@/lib/domain/cause";
import { componentOf } from "@/lib/domain/components";
import type { PartLine } from "@/lib/domain/job";
import type { EvidenceCheck, EvidenceItem } from "@/lib/evidence/evidence-check";
import { authorizationCheck } from "./authorization-check";
import type { ClaimTask, TaskKey } from "./claim";
import type { ClaimAmounts } from "./claim-amounts";
import type { ClaimCase, CoveredByPolicy } from "./claim-case";
import { centsInWords } from "./money-words";
import { repeatCheck } from "./repeat-check";

/** The six things a claim is made of, each in place, missing with what would fix it, or not asked for here. */
export function claimTasks(given: ClaimCase, covered: CoveredByPolicy, amounts: ClaimAmounts): readonly ClaimTask[] {
  return askedTasks(given, covered, amounts).map(({ key, applies, found, fixes }) =>
    applies
      ? { key, state: fixes.length === 0 ? "in_place" : "missing", found: found(), fixes }
      : { key, state: "does_not_apply", found: [], fixes: [] },
  );
}

/** What would fix everything that is missing, for whoever asks nothing else of a great many jobs. */
export function claimFixes(given: ClaimCase, covered: CoveredByPolicy, amounts: ClaimAmounts): readonly string[] {
  const all: string[] = [];
  for (const { fixes } of askedTasks(given, covered, amounts)) for (const fix of fixes) all.push(fix);
  return all;
}

interface AskedTask {
  readonly key: TaskKey;
  readonly applies: boolean;
  /** Most of the words of a task, so they wait until somebody reads them. */
  readonly found: () => readonly string[];
  readonly fixes: readonly string[];
}

function askedTasks(given: ClaimCase, covered: CoveredByPolicy, amounts: ClaimAmounts): readonly AskedTask[] {
  return [
    unitAndSerial(given),
    coverageWindow(given, covered),
    faultAndRemedy(given),
    ...evidenceTasks(given.evidence),
    partsAndLabour(given, covered, amounts),
  ];
}

function unitAndSerial({ record }: ClaimCase): AskedTask {
  const { model, serial } = record.unit;
  const fixes = [
    ...(model.trim() === "" ? ["Read the model with its suffix from the rating plate."] : []),
    ...(serial === undefined ? ["Read the serial from the rating plate and enter it."] : []),
  ];
  return task(
    "unit_and_serial",
    () => [`${record.unit.maker} ${model}`, ...(serial === undefined ? [] : [`Serial ${serial}`])],
    fixes,
  );
}

/** A start without its paper is still a start, but payers ask for the paper. A campaign asks for none. */
function coverageWindow({ decision, record }: ClaimCase, { items, source }: CoveredByPolicy): AskedTask {
  if (items.length === 0) return task("coverage_window", () => [], [`Parts: ${describeItem(decision.items.parts)}.`]);
  const hasReceipt = record.attachments.some((attachment) => attachment.subject === "receipt");
  const isAsked = source?.campaign === undefined && source?.payerKind !== "own_guarantee";
  const fixes = isAsked && !hasReceipt ? ["Attach proof of purchase: a receipt, delivery note or closing paper."] : [];
  return task("coverage_window", () => describeCoverage(decision).arithmetic, fixes);
}

function faultAndRemedy({ record, policy }: ClaimCase): AskedTask {
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
  const name = () => (component === undefined ? [] : [componentOf(component)?.name ?? component]);
  return task("fault_and_remedy", () => [...name(), causes[cause].name, ...unrelated], [...fixes, ...cannotCompare]);
}

/** By check: jobs on which nothing was read share one, and its words are put together once for all of them. */
const tasksOfChecks = new WeakMap<EvidenceCheck, readonly AskedTask[]>();

function evidenceTasks(evidence: EvidenceCheck): readonly AskedTask[] {
  const known = tasksOfChecks.get(evidence);
  if (known !== undefined) return known;
  const tasks = [
    evidenceTask("readings", evidence, (key) => key.startsWith("check:") || key === "reading_log" || key === "proof"),
    evidenceTask("photos", evidence, (key) => key.startsWith("photo:") || key === "part_labels"),
  ];
  tasksOfChecks.set(evidence, tasks);
  return tasks;
}

function evidenceTask(key: TaskKey, evidence: EvidenceCheck, belongs: (itemKey: string) => boolean): AskedTask {
  const applying = evidence.items.filter((item) => item.state !== "does_not_apply" && belongs(item.key));
  const found = () => applying.filter((item) => item.state === "in_place").map((item) => item.label);
  const fixes = applying.filter((item) => item.state === "missing").map(fixOf);
  return { key, applies: applying.length > 0, found, fixes };
}

function fixOf({ label, whatWouldFixIt, canStillBeHad }: EvidenceItem): string {
  return `${label}: ${whatWouldFixIt}${canStillBeHad ? "" : " It cannot be had after the repair."}`;
}

function partsAndLabour(given: ClaimCase, { items }: CoveredByPolicy, amounts: ClaimAmounts): AskedTask {
  const { record, policy } = given;
  const fitted = record.partLines.filter((line) => line.role === "fitted");
  const authorization = authorizationCheck(record, policy, amounts);
  const fixes = [
    ...(items.includes("parts") ? fitted.flatMap(invoiceFixes) : []),
    ...amounts.unknown,
    ...(authorization.kind === "missing" ? [authorization.fix] : []),
  ];
  const found = () => [
    ...amounts.lines.map((line) => `${line.description}: ${centsInWords(line.cents, policy.currency)} (${line.basis})`),
    ...(authorization.kind === "in_place" ? [authorization.found] : []),
  ];
  const applies = amounts.lines.length > 0 || authorization.kind === "in_place" || fixes.length > 0;
  return { key: "parts_and_labour", applies, found, fixes };
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

function task(key: TaskKey, found: AskedTask["found"], fixes: readonly string[]): AskedTask {
  return { key, applies: true, found, fixes };
}
