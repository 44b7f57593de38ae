import type { ExpectedRange } from "@/lib/domain/reading";
import { holds } from "@/lib/evidence/condition";
import { currentReadings, type JudgedReading, judgeReadings } from "@/lib/evidence/current-readings";
import type { EvidenceEntry } from "@/lib/evidence/entry";
import { answeredReadings } from "./answered-readings";
import { ownChecksOf } from "./sheet";
import type { SheetAnswer } from "./sheet-answer";
import { isExternal, liveEntries, type Verdict, verdictOf } from "./verdict";
import type { PlanStep, VisitPlan } from "./visit-plan";

/** Where a visit stands: what was answered, what it shows, and what may be asked next. */
export interface Walk {
  readonly path: readonly WalkedStep[];
  readonly current: readonly JudgedReading[];
  readonly verdict: Verdict;
  /** What is still worth asking, in the sheets' order; those of one tier are free to be taken in any order. */
  readonly open: readonly PlanStep[];
  /** Steps that what was found has made needless. */
  readonly needless: readonly PlanStep[];
}

export interface WalkedStep {
  readonly answer: SheetAnswer;
  readonly step: PlanStep | undefined;
  /** Undefined for a step that was passed over. */
  readonly judged: JudgedReading | undefined;
}

/** @param ranges  expected ranges of the model */
export function walk(plan: VisitPlan, answers: readonly SheetAnswer[], ranges: readonly ExpectedRange[]): Walk {
  const ordered = [...answers].sort((a, b) => a.sequence - b.sequence || (a.id < b.id ? -1 : 1));
  const readings = answeredReadings(ordered, { technician: undefined, own: ownChecksOf(plan.sheets) });
  const judged = judgeReadings(readings, ranges, plan.productType);
  const current = currentReadings(judged);
  const verdict = verdictOf(plan, { current, readings, ranges });
  const wanted = wantedEntries(plan, verdict, current);
  const unanswered = plan.steps.filter((step) => !isAnswered(step, ordered, current));
  const open = unanswered.filter((step) => isWorthAsking(step, wanted, verdict, current));
  return {
    path: pathOf(plan, ordered, judged),
    current,
    verdict,
    open,
    needless: unanswered.filter((step) => !open.includes(step)),
  };
}

/** Which entries are still worth asking about: while the search is open all that live, then those that are shown, for their proof. */
function wantedEntries(plan: VisitPlan, verdict: Verdict, current: readonly JudgedReading[]): readonly EvidenceEntry[] {
  switch (verdict.kind) {
    case "open":
      return liveEntries(plan, current);
    case "part":
      return verdict.entries;
    case "outside":
      return plan.entries.filter(isExternal);
    default:
      return [];
  }
}

function isWorthAsking(
  step: PlanStep,
  wanted: readonly EvidenceEntry[],
  verdict: Verdict,
  current: readonly JudgedReading[],
): boolean {
  const of = wanted.filter(({ id }) => step.entryIds.has(id));
  if (of.length === 0) return false;
  if (verdict.kind === "outside") return of.some((entry) => isAfterClearing(step, entry));
  const isRequiredHere = of.some((entry) => isRequired(step, entry));
  if (step.branch !== undefined && holds(step.branch.when, current) === undefined)
    return verdict.kind === "part" && isRequiredHere;
  // What was found leads to it: a split by frost behind a damaged impeller is still to be ruled out when the pump is named.
  if (step.branch !== undefined) return true;
  return verdict.kind !== "part" || isRequiredHere || isEnabler(step);
}

function isRequired({ check }: PlanStep, { steps, minimumEvidence }: EvidenceEntry): boolean {
  return (
    steps.some((alternatives) => alternatives.includes(check.key)) ||
    minimumEvidence.some(({ need }) => need.kind === "reading" && need.check === check.key)
  );
}

/** With a cause outside the part, only what shows that the machine works once it is cleared. */
function isAfterClearing({ check }: PlanStep, { minimumEvidence }: EvidenceEntry): boolean {
  return minimumEvidence.some(({ need }) => need.kind === "reading" && need.check === check.key);
}

/** What makes a missing voltage mean something. */
function isEnabler({ check }: PlanStep): boolean {
  return check.key === "interlocks" || check.key === "drain_command";
}

/** Read at every point, passed over, or done by another check of the same required step. A reading that proves nothing counts as given: the screen says so at once, and the evidence lists it. */
export function isAnswered(
  { check, times, sameAs }: PlanStep,
  answers: readonly SheetAnswer[],
  current: readonly JudgedReading[],
): boolean {
  const own = answers.filter((answer) => answer.check === check.key);
  if (own.some(({ given }) => given.kind === "skip")) return true;
  if (sameAs.some((other) => holds({ is: "decided", check: other }, current) !== undefined)) return true;
  return new Set(own.map(({ time }) => time)).size >= times;
}

function pathOf(
  plan: VisitPlan,
  answers: readonly SheetAnswer[],
  judged: readonly JudgedReading[],
): readonly WalkedStep[] {
  let place = 0;
  return answers.map((answer) => ({
    answer,
    step: plan.steps.find(({ check }) => check.key === answer.check),
    judged: answer.given.kind === "reading" ? judged[place++] : undefined,
  }));
}
