import { exactly, type LastDayRange } from "@/lib/calendar/day-range";
import type { PayItem } from "@/lib/domain/pay-item";
import {
  adjustedLines,
  type CoverLine,
  coverLines,
  findRegistration,
  type RegistrationFound,
  type Unsure,
} from "./cover-lines";
import { coverWindow } from "./cover-window";
import type { CoverWindow, EvidenceReason, ProofDocument } from "./coverage-decision";
import type { CoverageFacts } from "./coverage-facts";
import { findStart, type StartContext, type StartSearch } from "./find-start";
import type { PolicyInForce } from "./select-policies";

/** A line of the terms with its days, or with the document that would give them. */
export type DatedLine =
  | {
      readonly kind: "dated";
      readonly pays: readonly PayItem[];
      readonly window: CoverWindow;
      readonly isWholeUnit: boolean;
      readonly unsure: Unsure | undefined;
    }
  | {
      readonly kind: "open";
      readonly pays: readonly PayItem[];
      readonly reason: EvidenceReason;
      readonly document: ProofDocument;
    };

export interface DatedLines {
  readonly start: StartSearch;
  readonly registration: RegistrationFound;
  readonly lines: readonly DatedLine[];
}

/** Every line of one policy that speaks of this job, each with its first and last covered day. */
export function datedLines(
  inForce: PolicyInForce,
  facts: CoverageFacts,
  makerCoverEnd: StartContext["makerCoverEnd"],
): DatedLines {
  const { policy, contract } = inForce;
  const context = { contract, makerCoverEnd };
  const start = findStart(policy, facts, context, undefined);
  const registration: RegistrationFound =
    start.kind === "found" ? findRegistration(policy, facts, start.start) : { kind: "none" };
  const lines = coverLines(policy, facts).flatMap((line) => {
    const own = line.from === undefined ? start : findStart(policy, facts, context, line.from);
    return adjustedLines(line, { policy, facts, registration }).map((adjusted) => dated(adjusted, own, inForce, facts));
  });
  return { start, registration, lines: withReplacedPart(lines, inForce, facts) };
}

function dated(
  line: CoverLine,
  start: StartSearch,
  { policy, contract }: PolicyInForce,
  facts: CoverageFacts,
): DatedLine {
  if (start.kind === "open") return { kind: "open", pays: line.pays, reason: start.reason, document: start.document };
  const { pays, term, termRule, anchorDay, isWholeUnit, unsure } = line;
  const window = coverWindow({ policy, facts, contract, start: start.start, term, termRule, anchorDay, isWholeUnit });
  return { kind: "dated", pays, window, isWholeUnit, unsure };
}

/**
 * A part that was fitted under this cover and failed again: the remainder, its own term, or the later of the two.
 * Source: "whichever is longer" is a type of term in published part warranties.
 */
function withReplacedPart(
  lines: readonly DatedLine[],
  { policy, contract }: PolicyInForce,
  facts: CoverageFacts,
): readonly DatedLine[] {
  const rule = policy.replacementPart;
  if (rule.kind === "remainder" || facts.replacedPartFittedOn === undefined) return lines;
  const start = {
    event: "replacement_part" as const,
    on: exactly(facts.replacedPartFittedOn),
    precision: "day" as const,
    seenIn: undefined,
    isFallback: false,
    movedBy: undefined,
  };
  const { term, pays } = rule;
  const own = coverWindow({
    policy,
    facts,
    contract,
    start,
    term,
    termRule: "replacement_part",
    anchorDay: policy.anchorDay,
    isWholeUnit: false,
  });
  // An open question about the remainder stays open beside the part's own term.
  const others = lines.map((line) =>
    line.kind === "open" && rule.combine !== "own_term_only"
      ? line
      : { ...line, pays: line.pays.filter((item) => !pays.includes(item)) },
  );
  const replaced = pays.map((item): DatedLine => {
    const remainder = rule.combine === "own_term_only" ? undefined : latestWindow(lines, item);
    const window = remainder === undefined ? own : laterWindow(remainder, own);
    return { kind: "dated", pays: [item], window, isWholeUnit: false, unsure: undefined };
  });
  return [...others, ...replaced];
}

function latestWindow(lines: readonly DatedLine[], item: PayItem): CoverWindow | undefined {
  const windows = lines.flatMap((line) => (line.kind === "dated" && line.pays.includes(item) ? [line.window] : []));
  return windows.reduce<CoverWindow | undefined>(
    (best, window) => (best === undefined || endsLater(window.last, best.last) ? window : best),
    undefined,
  );
}

function laterWindow(remainder: CoverWindow, own: CoverWindow): CoverWindow {
  const ends = [...remainder.ends, ...own.ends];
  return endsLater(own.last, remainder.last) ? { ...own, ends } : { ...remainder, ends };
}

export function endsLater(one: LastDayRange, other: LastDayRange): boolean {
  if (other.latest === "lifetime") return false;
  return one.latest === "lifetime" || one.latest > other.latest;
}
