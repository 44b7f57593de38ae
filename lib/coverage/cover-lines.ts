import type { Day } from "@/lib/calendar/day";
import { type AnchorDay, addTerm, type Term } from "@/lib/calendar/term";
import type { PayItem } from "@/lib/domain/pay-item";
import type { Policy } from "@/lib/domain/policy";
import type { StartPoint } from "@/lib/domain/policy-start";
import type { CoverSubject, CoverTerm } from "@/lib/domain/policy-terms";
import type { WindowInput } from "./cover-window";
import type { EvidenceReason, ProofDocument, StartFound } from "./coverage-decision";
import type { CoverageFacts, DatedFact } from "./coverage-facts";

/** One line of the terms that speaks of this job, with the length it has here. */
export interface CoverLine {
  readonly pays: readonly PayItem[];
  readonly term: Term;
  readonly termRule: WindowInput["termRule"];
  readonly from: StartPoint | undefined;
  readonly anchorDay: AnchorDay;
  /** A contract that follows the maker's cover begins after lines like this, not after a single class of parts. */
  readonly isWholeUnit: boolean;
  /** What must be known before this line can pay, such as which part failed. */
  readonly unsure: Unsure | undefined;
}

export interface Unsure {
  readonly reason: EvidenceReason;
  readonly document: ProofDocument;
}

/** The lines that cover this component or kind of work; none where the terms do not reach it. */
export function coverLines(policy: Policy, facts: CoverageFacts): readonly CoverLine[] {
  return policy.terms
    .filter((line) => speaksOf(line.covers, policy, facts))
    .map((line) => plainLine(line, policy, facts));
}

/**
 * The length that commercial use, or registering in time, gives a line instead of its own. While nobody can say whether
 * the unit was registered in time the shorter term holds, and the longer one stands beside it as an open question.
 */
export function adjustedLines(line: CoverLine, covers: Adjustment): readonly CoverLine[] {
  const { policy, facts } = covers;
  if (policy.use.kind === "commercial_term" && facts.unit.use === "commercial") {
    const { pays, term } = policy.use;
    return [{ ...line, pays: line.pays.filter((item) => pays.includes(item)), term, termRule: "use" }];
  }
  if (covers.registration.kind === "none" || line.termRule !== "registration") return [line];
  const { termIfRegistered, termOtherwise, standing } = covers.registration;
  if (standing === "in_time" || standing === "not_asked") return [{ ...line, term: termIfRegistered }];
  const plain = { ...line, term: termOtherwise };
  return standing === "unsure" ? [plain, { ...line, term: termIfRegistered, unsure: unsureRegistration }] : [plain];
}

const unsureRegistration: Unsure = { reason: "registration_unsure", document: "registration_record" };
const unsureComponent: Unsure = { reason: "component_unknown", document: "diagnosis" };

export interface Adjustment {
  readonly policy: Policy;
  readonly facts: CoverageFacts;
  readonly registration: RegistrationFound;
}

export type RegistrationFound =
  | { readonly kind: "none" }
  | {
      readonly kind: "asked";
      readonly deadline: Day;
      /**
       * `none`: no registration is on file. `unsure`: its day is known only as a range, or what stands there is no day.
       * `not_asked`: a full warranty may not hang on registering (16 CFR 700.7(b)).
       */
      readonly standing: "in_time" | "late" | "none" | "unsure" | "not_asked";
      readonly termIfRegistered: Term;
      readonly termOtherwise: Term;
    };

/** A registration counts when it came no later than the policy allows after the latest day the term can have begun. */
export function findRegistration(policy: Policy, facts: CoverageFacts, start: StartFound): RegistrationFound {
  const rule = policy.registration;
  if (rule === undefined) return { kind: "none" };
  const deadline = addTerm(start.on.latest, rule.within);
  return {
    kind: "asked",
    deadline,
    standing: policy.designation === "full" ? "not_asked" : standingOf(facts.unit.dates.registration, deadline),
    termIfRegistered: rule.termIfRegistered,
    termOtherwise: rule.termOtherwise,
  };
}

function standingOf(fact: DatedFact | undefined, deadline: Day) {
  if (fact === undefined) return "none";
  if (fact.kind !== "known") return "unsure";
  if (fact.on.latest <= deadline) return "in_time";
  return fact.on.earliest > deadline ? "late" : "unsure";
}

function plainLine(line: CoverTerm, policy: Policy, facts: CoverageFacts): CoverLine {
  const isRegistered = policy.registration !== undefined && line.covers.kind === "whole_unit";
  return {
    // Where nothing was found to have failed there is nothing to repair; the visit may be paid as a diagnosis.
    pays: facts.cause === "no_fault_found" ? line.pays.filter((item) => item === "diagnosis") : line.pays,
    term: line.term,
    termRule: isRegistered ? "registration" : "term",
    from: line.from,
    anchorDay: line.anchorDay ?? policy.anchorDay,
    isWholeUnit: line.covers.kind === "whole_unit",
    unsure: line.covers.kind === "class" && facts.component === undefined ? unsureComponent : undefined,
  };
}

/** Adjustments and looks have terms of their own where the policy has such lines; else an adjustment is a repair. */
function speaksOf(covers: CoverSubject, policy: Policy, facts: CoverageFacts): boolean {
  if (facts.kind === "cosmetic") return covers.kind === "cosmetic";
  const hasOwn = facts.kind === "adjustment" && policy.terms.some((line) => line.covers.kind === "adjustment");
  if (hasOwn) return covers.kind === "adjustment";
  if (covers.kind === "whole_unit") return true;
  if (covers.kind !== "class") return false;
  if (facts.component === undefined) return true;
  const { component } = facts;
  return policy.classes.some((entry) => entry.key === covers.class && entry.members.includes(component));
}
