import type { Day } from "@/lib/calendar/day";
import { addTerm } from "@/lib/calendar/term";
import type { PolicyClocks } from "@/lib/domain/policy-clocks";
import type { ActName, ClaimAct, ClaimEvent, LineAmount } from "./claim-act";
import { type ClaimStanding, type ClaimState, claimStanding, standingEvents } from "./claim-standing";

/** Which acts may follow in each state. Source of the order: common practice, no source; the clocks are the policy's. */
export const actsAfter: Readonly<Record<ClaimState, readonly ActName[]>> = {
  draft: ["sent", "withdrawn"],
  withdrawn: [],
  sent: ["received", "answered", "paid", "written off"],
  received: ["answered", "paid", "written off"],
  approved: ["paid", "appealed", "written off"],
  "needs correction": ["sent", "appealed", "written off"],
  rejected: ["sent", "appealed", "written off"],
  appealed: ["answered", "paid", "written off"],
  "short-paid": ["paid", "appealed", "written off", "audit opened", "clawed back"],
  paid: ["audit opened", "clawed back"],
  "written off": ["paid", "appealed"],
  "in audit": ["audit upheld", "clawed back"],
  "clawed back": ["appealed", "paid"],
};

export interface ActRefusal {
  readonly sentence: string;
}

/**
 * Whether an act may follow what has happened so far. Late acts are not refused: money that a payer grants after its
 * own clock ran out is still money, so lateness is told by `claimDeadlines` and stays a warning.
 * @returns undefined where it may; otherwise the reason in a sentence for whoever entered it
 */
export function judgeAct(events: readonly Pick<ClaimEvent, "number" | "act">[], act: ClaimAct): ActRefusal | undefined {
  if (events.length === 0) return act.what === "built" ? undefined : refuse("A claim begins by being built.");
  if (act.what === "undone") return undoing(events, act.event);
  const standing = claimStanding(events);
  if (!actsAfter[standing.state].includes(act.what))
    return refuse(`A claim that is ${standing.state} can't be ${actWords[act.what]}.`);
  return orderOfDays(standing, act) ?? amounts(standing, act);
}

export interface ClaimDeadlines {
  /** Last day on which a corrected claim may follow; undefined unless it waits for correction. */
  readonly resubmitBy: Day | undefined;
  /** Whether the policy lets it be filed once more. */
  readonly mayFileAgain: boolean;
  /** Until when the failed part must be kept; undefined while that clock has not begun. */
  readonly keepPartUntil: Day | undefined;
}

/** The clocks that run from what has happened; filing itself is decided by lib/coverage/decide-filing.ts. */
export function claimDeadlines(standing: ClaimStanding, clocks: PolicyClocks): ClaimDeadlines {
  const waits = standing.state === "needs correction" || standing.state === "rejected";
  const mayFileAgain = standing.filings <= clocks.resubmission.times;
  const heldFrom = clocks.partHold.from === "filed" ? standing.firstSentOn : standing.paidOn;
  return {
    resubmitBy:
      waits && mayFileAgain && standing.answeredOn !== undefined
        ? addTerm(standing.answeredOn, clocks.resubmission.within)
        : undefined,
    mayFileAgain,
    keepPartUntil: heldFrom === undefined ? undefined : addTerm(heldFrom, clocks.partHold.within),
  };
}

const actWords: Readonly<Record<ActName, string>> = {
  built: "built again",
  withdrawn: "withdrawn",
  sent: "sent",
  received: "marked as received",
  answered: "answered",
  paid: "paid",
  appealed: "appealed",
  "written off": "written off",
  "audit opened": "put into an audit",
  "audit upheld": "upheld",
  "clawed back": "clawed back",
  undone: "taken back",
};

/** Only the latest answer or payment can be taken back, so that nothing that rests on it is left standing. */
function undoing(events: readonly Pick<ClaimEvent, "number" | "act">[], event: number): ActRefusal | undefined {
  const standing = standingEvents(events);
  const found = standing.find(({ number }) => number === event);
  if (found === undefined) return refuse(`Event ${event} does not count any more.`);
  const { what } = found.act;
  if (what !== "paid" && what !== "answered" && what !== "clawed back")
    return refuse(`That a claim was ${what} can't be taken back.`);
  const later = standing.find(({ number }) => number > event);
  if (later === undefined) return undefined;
  return refuse(`It was ${later.act.what} after it was ${what}. Take that back first.`);
}

function orderOfDays(standing: ClaimStanding, act: ClaimAct): ActRefusal | undefined {
  if (!("on" in act)) return undefined;
  const after = act.what === "sent" ? (standing.answeredOn ?? standing.lastSentOn) : standing.lastSentOn;
  if (after === undefined || act.on >= after) return undefined;
  return refuse(`${act.on} is before ${after}, when it was ${act.what === "sent" ? "answered" : "sent"}.`);
}

function amounts(standing: ClaimStanding, act: ClaimAct): ActRefusal | undefined {
  if (act.what === "sent") return sentLines(act.lines);
  const lines =
    act.what === "paid" || act.what === "clawed back"
      ? act.lines
      : act.what === "answered" && act.answer.kind === "approved"
        ? act.answer.lines
        : [];
  for (const { line, cents } of lines) {
    const known = standing.lines.find((each) => each.line === line);
    if (known === undefined) return refuse(`Line ${line} is not a line of this claim.`);
    if (!Number.isInteger(cents) || cents < 0) return refuse(`Line ${line}: whole cents, 0 or more, are needed.`);
    if (act.what === "answered" && cents > known.askedCents)
      return refuse(`Line ${line}: more was approved than was asked.`);
    if (act.what === "clawed back" && known.clawedBackCents + cents > known.paidCents)
      return refuse(`Line ${line}: more would be taken back than was paid.`);
  }
  return undefined;
}

function sentLines(lines: readonly LineAmount[]): ActRefusal | undefined {
  if (lines.length === 0) return refuse("A claim without lines asks for nothing.");
  const wrong = lines.find(({ cents }) => !Number.isInteger(cents) || cents < 0);
  return wrong && refuse(`Line ${wrong.line}: whole cents, 0 or more, are needed.`);
}

function refuse(sentence: string): ActRefusal {
  return { sentence };
}
