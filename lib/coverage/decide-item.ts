import type { Day } from "@/lib/calendar/day";
import type { PayItem } from "@/lib/domain/pay-item";
import type { StartEvent } from "@/lib/domain/policy-start";
import type { Gate } from "./cover-gates";
import type { CoverSource, CoverWindow, ItemDecision, StartFound } from "./coverage-decision";
import { type DatedLine, endsLater } from "./dated-lines";
import { boundaryOf, judgeWindow } from "./judge-window";
import { startDocuments } from "./start-documents";

/** What the terms and rules of one policy version say of a job, before any pay item is asked for. */
export interface PolicyAnswers {
  readonly source: CoverSource;
  /** Lines of the terms that speak of the job, each with its own answer. */
  readonly lines: readonly LineAnswer[];
  /** The first rule that stopped the job, else the first that is open. */
  readonly gate: Gate | undefined;
  readonly decisiveOn: Day | undefined;
}

export interface LineAnswer {
  readonly pays: readonly PayItem[];
  readonly answer: ItemDecision;
}

export function lineAnswers(
  lines: readonly DatedLine[],
  source: CoverSource,
  decisiveOn: Day | undefined,
): readonly LineAnswer[] {
  return lines.map((line) => ({ pays: line.pays, answer: decideLine(line, source, decisiveOn) }));
}

/** One pay item under one policy. The best line of the terms decides; a rule that stops the job outranks the days. */
export function decideItem(item: PayItem, { source, lines, gate, decisiveOn }: PolicyAnswers): ItemDecision {
  const best = bestAnswer(item, lines) ?? notPaid(lines, source);
  if (gate === undefined || gate.kind === "passed") return best;
  const window = windowOf(best);
  if (gate.kind === "stopped") {
    const boundary = boundaryIn(window, decisiveOn);
    return { verdict: "not_covered", reason: gate.reason, by: source, window, boundary };
  }
  if (best.verdict === "not_covered") return best;
  return { verdict: "needs_evidence", reason: gate.reason, document: gate.document, by: source, window };
}

function bestAnswer(item: PayItem, lines: readonly LineAnswer[]): ItemDecision | undefined {
  let best: ItemDecision | undefined;
  for (const { pays, answer } of lines) if (pays.includes(item)) best = better(best, answer);
  return best;
}

export function windowOf(decision: ItemDecision): CoverWindow | undefined {
  return "window" in decision ? decision.window : undefined;
}

function decideLine(line: DatedLine, source: CoverSource, decisiveOn: Day | undefined): ItemDecision {
  if (line.kind === "open") {
    return { verdict: "needs_evidence", reason: line.reason, document: line.document, by: source, window: undefined };
  }
  const decision = decideWindow(line.window, source, decisiveOn);
  const { unsure, window } = line;
  if (unsure === undefined || decision.verdict !== "covered") return decision;
  return { verdict: "needs_evidence", ...unsure, by: source, window };
}

export function decideWindow(window: CoverWindow, source: CoverSource, decisiveOn: Day | undefined): ItemDecision {
  if (decisiveOn === undefined) {
    return { verdict: "needs_evidence", reason: "decisive_day_unknown", document: "visit_record", by: source, window };
  }
  const boundary = boundaryOf(window, decisiveOn);
  switch (judgeWindow(window, decisiveOn)) {
    case "inside":
      return { verdict: "covered", by: source, window, boundary };
    case "after":
      return { verdict: "not_covered", reason: "term_ended", by: source, window, boundary };
    case "before": {
      const isWaiting = window.start !== undefined && decisiveOn >= window.start.on.earliest;
      return {
        verdict: "not_covered",
        reason: isWaiting ? "waiting_period" : "not_started",
        by: source,
        window,
        boundary,
      };
    }
    case "ends_differ":
      return { verdict: "needs_evidence", ...rangeDoubt(window.start), by: source, window };
  }
}

function rangeDoubt(start: StartFound | undefined): Pick<NeedsEvidence, "reason" | "document"> {
  const reason = start?.precision === "two_readings" ? "ambiguous_date" : "ends_differ";
  const event = start?.event;
  return { reason, document: event === undefined || isKept(event) ? "visit_record" : startDocuments[event] };
}

/** Starts that are read off a paper of their own and never known only as a range. */
function isKept(event: StartFound["event"]): event is Exclude<StartFound["event"], StartEvent> {
  return !(event in startDocuments);
}

type NeedsEvidence = Extract<ItemDecision, { readonly verdict: "needs_evidence" }>;

/** Covered before doubtful before refused; of two refusals the one that ended later is shown. */
function better(best: ItemDecision | undefined, next: ItemDecision): ItemDecision {
  if (best === undefined) return next;
  if (weight[next.verdict] !== weight[best.verdict]) return weight[next.verdict] > weight[best.verdict] ? next : best;
  const [bestWindow, nextWindow] = [windowOf(best), windowOf(next)];
  if (bestWindow === undefined || nextWindow === undefined) return best;
  return endsLater(nextWindow.last, bestWindow.last) ? next : best;
}

export const weight: Readonly<Record<ItemDecision["verdict"], number>> = {
  covered: 4,
  needs_evidence: 3,
  needs_local_law: 2,
  not_covered: 1,
  invalid_data: 0,
};

/** The terms may speak of the component and still not pay this item, or not speak of it at all. */
function notPaid(lines: readonly LineAnswer[], source: CoverSource): ItemDecision {
  const reason = lines.length === 0 ? "component_not_in_terms" : "item_not_paid";
  return { verdict: "not_covered", reason, by: source, window: undefined, boundary: { kind: "none" } };
}

function boundaryIn(window: CoverWindow | undefined, decisiveOn: Day | undefined) {
  return window === undefined || decisiveOn === undefined
    ? ({ kind: "none" } as const)
    : boundaryOf(window, decisiveOn);
}
