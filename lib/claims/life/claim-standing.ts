import type { Day } from "@/lib/calendar/day";
import type { ClaimItem } from "../claim";
import type { AskedLine, ClaimAct, ClaimEvent, LineAmount } from "./claim-act";

const claimStates = [
  "draft",
  "withdrawn",
  "sent",
  "received",
  "approved",
  "needs correction",
  "rejected",
  "appealed",
  "short-paid",
  "paid",
  "written off",
  "in audit",
  "clawed back",
] as const;
export type ClaimState = (typeof claimStates)[number];

/** Where a claim stands, with the money of each line. All amounts are whole cents. */
export interface ClaimStanding {
  readonly state: ClaimState;
  readonly lines: readonly LineStanding[];
  readonly askedCents: number;
  /** Undefined until the payer answered. */
  readonly approvedCents: number | undefined;
  readonly paidCents: number;
  readonly clawedBackCents: number;
  /** Asked and neither paid nor given up; 0 once it is settled. */
  readonly openCents: number;
  /** How often it was filed. */
  readonly filings: number;
  readonly appeals: number;
  readonly firstSentOn: Day | undefined;
  readonly lastSentOn: Day | undefined;
  /** Day of the payer's latest answer. */
  readonly answeredOn: Day | undefined;
  readonly paidOn: Day | undefined;
}

export interface LineStanding {
  readonly line: number;
  readonly item: ClaimItem;
  readonly askedCents: number;
  readonly approvedCents: number | undefined;
  readonly paidCents: number;
  readonly clawedBackCents: number;
}

const notStarted: ClaimStanding = {
  state: "draft",
  lines: [],
  askedCents: 0,
  approvedCents: undefined,
  paidCents: 0,
  clawedBackCents: 0,
  openCents: 0,
  filings: 0,
  appeals: 0,
  firstSentOn: undefined,
  lastSentOn: undefined,
  answeredOn: undefined,
  paidOn: undefined,
};

/** Where a claim stands after these events, which are taken in the order of their numbers. */
export function claimStanding(events: readonly Pick<ClaimEvent, "number" | "act">[]): ClaimStanding {
  return standingEvents(events).reduce((standing, { act }) => after(standing, act), notStarted);
}

/** Events that count, in their order: those that were taken back are left out, and so is the taking back itself. */
export function standingEvents<Event extends Pick<ClaimEvent, "number" | "act">>(events: readonly Event[]): Event[] {
  const undone = new Set(events.flatMap(({ act }) => (act.what === "undone" ? [act.event] : [])));
  return events
    .filter(({ number, act }) => act.what !== "undone" && !undone.has(number))
    .sort((a, b) => a.number - b.number);
}

function after(standing: ClaimStanding, act: ClaimAct): ClaimStanding {
  switch (act.what) {
    case "undone":
      return standing; // left out before
    case "built":
      return { ...standing, state: "draft" };
    case "withdrawn":
      return settled({ ...standing, state: "withdrawn" });
    case "sent":
      return summed({
        ...standing,
        state: "sent",
        lines: asked(standing, act.lines),
        filings: standing.filings + 1,
        firstSentOn: standing.firstSentOn ?? act.on,
        lastSentOn: act.on,
      });
    case "received":
      return { ...standing, state: "received" };
    case "answered":
      return answered(standing, act);
    case "paid":
      return paid(standing, act);
    case "appealed":
      return { ...standing, state: "appealed", appeals: standing.appeals + 1 };
    case "written off":
      return settled({ ...standing, state: "written off" });
    case "audit opened":
      return { ...standing, state: "in audit" };
    case "audit upheld":
      return { ...standing, state: standing.paidCents < standing.askedCents ? "short-paid" : "paid" };
    case "clawed back":
      return settled(
        summed({ ...standing, state: "clawed back", lines: added(standing, act.lines, "clawedBackCents") }),
      );
  }
}

/** Filing anew replaces what is asked; what was paid for a line stays with it. */
function asked({ lines }: ClaimStanding, now: readonly AskedLine[]): LineStanding[] {
  return now.map(({ line, item, cents }) => {
    const before = lines.find((each) => each.line === line);
    return {
      line,
      item,
      askedCents: cents,
      approvedCents: undefined,
      paidCents: before?.paidCents ?? 0,
      clawedBackCents: before?.clawedBackCents ?? 0,
    };
  });
}

function answered(standing: ClaimStanding, { on, answer }: Extract<ClaimAct, { what: "answered" }>): ClaimStanding {
  if (answer.kind !== "approved") return summed({ ...standing, state: answer.kind, answeredOn: on });
  const lines = standing.lines.map((line) => ({ ...line, approvedCents: centsOf(answer.lines, line.line) }));
  return summed({ ...standing, state: "approved", lines, answeredOn: on });
}

function paid(standing: ClaimStanding, act: Extract<ClaimAct, { what: "paid" }>): ClaimStanding {
  const now = summed({ ...standing, lines: added(standing, act.lines, "paidCents"), paidOn: act.on });
  return { ...now, state: now.paidCents < now.askedCents ? "short-paid" : "paid" };
}

function added(
  { lines }: ClaimStanding,
  amounts: readonly LineAmount[],
  to: "paidCents" | "clawedBackCents",
): LineStanding[] {
  return lines.map((line) => ({ ...line, [to]: line[to] + centsOf(amounts, line.line) }));
}

function centsOf(amounts: readonly LineAmount[], line: number): number {
  return amounts.reduce((sum, each) => sum + (each.line === line ? each.cents : 0), 0);
}

function summed(standing: ClaimStanding): ClaimStanding {
  const total = (of: (line: LineStanding) => number) => standing.lines.reduce((sum, line) => sum + of(line), 0);
  const wasAnswered = standing.lines.some((line) => line.approvedCents !== undefined);
  return {
    ...standing,
    askedCents: total((line) => line.askedCents),
    approvedCents: wasAnswered ? total((line) => line.approvedCents ?? 0) : undefined,
    paidCents: total((line) => line.paidCents),
    clawedBackCents: total((line) => line.clawedBackCents),
    openCents: total((line) => Math.max(0, line.askedCents - line.paidCents)),
  };
}

function settled(standing: ClaimStanding): ClaimStanding {
  return { ...standing, openCents: 0 };
}
