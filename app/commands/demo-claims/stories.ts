import type { Day } from "@/lib/calendar/day";
import type { ClaimAct } from "@/lib/claims/life/claim-act";
import type { ClaimStanding } from "@/lib/claims/life/claim-standing";
import type { RefusalReason } from "@/lib/claims/life/refusal-reason";

export interface DemoStory {
  /** Days from completion to its last act, so that nothing of it lies ahead. */
  readonly days: number;
  /** Left as a draft with its window still open. */
  readonly isDraft: boolean;
  readonly steps: readonly DemoStep[];
}

export interface DemoStep {
  /** Days after completion. */
  readonly after: number;
  readonly act: "send" | ((standing: ClaimStanding, on: Day) => Exclude<ClaimAct, { what: "sent" | "built" }>);
}

type Act = Exclude<DemoStep["act"], "send">;
const step = (after: number, act: DemoStep["act"]): DemoStep => ({ after, act });
const send = (after: number) => step(after, "send");

const received: Act = (_, on) => ({ what: "received", on, payerReference: `P${on.replaceAll("-", "")}` });
const approved: Act = ({ lines }, on) => ({
  what: "answered",
  on,
  answer: {
    kind: "approved",
    lines: lines.map(({ line, askedCents }) => ({ line, cents: askedCents })),
    reason: undefined,
    payerText: "APPROVED AS SUBMITTED",
  },
});
/** What payers argue about: the labour, or the first line of a claim on parts alone. */
const disputed = (lines: ClaimStanding["lines"]) => lines.find(({ item }) => item === "labour") ?? lines[0];
const cut: Act = ({ lines }, on) => ({
  what: "answered",
  on,
  answer: {
    kind: "approved",
    lines: lines.map((each) => ({
      line: each.line,
      cents: each === disputed(lines) ? Math.min(4_500, Math.floor(each.askedCents * 0.7)) : each.askedCents,
    })),
    reason: "over_schedule",
    payerText: "LABOR REDUCED TO ALLOWANCE",
  },
});
const refused =
  (kind: "rejected" | "needs correction", reason: RefusalReason, payerText: string): Act =>
  (_, on) => ({
    what: "answered",
    on,
    answer: kind === "rejected" ? { kind, reason, payerText } : { kind, reason, payerText },
  });
const paid =
  (part: "asked" | "approved"): Act =>
  ({ lines }, on) => ({
    what: "paid",
    on,
    reference: `CR-${on.replaceAll("-", "")}`,
    lines: lines.map(({ line, askedCents, approvedCents, paidCents }) => ({
      line,
      cents: Math.max(0, (part === "asked" ? askedCents : (approvedCents ?? askedCents)) - paidCents),
    })),
  });
const appealed =
  (ground: string): Act =>
  (_, on) => ({ what: "appealed", on, ground });
const writtenOff =
  (reason: string): Act =>
  (_, on) => ({ what: "written off", on, reason });
const audit: Act = (_, on) => ({ what: "audit opened", on, reference: `A-${on.slice(0, 7)}` });
const upheld: Act = (_, on) => ({ what: "audit upheld", on });
const takenBack: Act = ({ lines }, on) => ({
  what: "clawed back",
  on,
  reference: `A-${on.slice(0, 7)}`,
  reason: "documents_missing",
  payerText: "NO CUSTOMER SIGNATURE ON FILE",
  lines: lines.filter((each) => each === disputed(lines)).map(({ line, paidCents }) => ({ line, cents: paidCents })),
});
const withdrawn: Act = () => ({ what: "withdrawn", reason: "The customer paid; the term had ended." });

const noDate = refused("rejected", "purchase_date", "POP INVALID OR MISSING");
const noPart = refused("needs correction", "part_not_verified", "INV # DOES NOT MATCH PART");
const repeat = refused("rejected", "repeat", "2ND REPAIR W/IN 30 DAYS");

const story = (...steps: readonly DemoStep[]): DemoStory => ({
  days: steps.at(-1)?.after ?? 0,
  isDraft: steps.length === 0,
  steps,
});

/** Invented lives of claims, in the shares of a shop that files most of its work and is paid for most of it. */
export const demoStories: readonly DemoStory[] = [
  ...Array.from({ length: 4 }, () => story()),
  story(step(6, withdrawn)),
  ...[3, 6, 9].map((after) => story(send(after))),
  // On their way long enough to be in the list that a payer sends.
  ...Array.from({ length: 9 }, () => ({ ...story(send(5)), days: 14 })),
  { ...story(send(4), step(7, received)), days: 60 },
  story(send(8), step(9, received)),
  story(send(8), step(12, received)),
  story(send(6), step(8, received), step(30, approved)),
  story(send(6), step(33, noPart)),
  story(send(9), step(35, noDate)),
  story(send(4), step(36, repeat)),
  story(send(6), step(30, repeat), step(34, appealed("The earlier repair was another component; see its job."))),
  story(send(6), step(30, cut), step(45, paid("approved"))),
  story(send(7), step(28, cut), step(40, paid("approved")), step(44, appealed("The schedule in force pays 65.00."))),
  story(send(5), step(30, cut), step(48, paid("approved"))),
  story(send(5), step(30, noPart), step(36, "send"), step(60, approved), step(70, paid("approved"))),
  ...[30, 34, 38, 42, 46, 50].map((after) =>
    story(send(5), step(8, received), step(after, approved), step(after + 9, paid("asked"))),
  ),
  story(send(10), step(40, noDate), step(75, writtenOff("The receipt can’t be found, and the clock has run out."))),
  story(send(10), step(40, repeat), step(60, writtenOff("It was the same fault; the shop bears it."))),
  story(send(6), step(40, paid("asked")), step(100, audit)),
  story(send(6), step(40, paid("asked")), step(90, audit), step(110, upheld)),
  story(send(6), step(38, paid("asked")), step(90, audit), step(115, takenBack)),
];

/** What becomes of claims on service contracts: fewer of them, since most households have none. */
export const contractStories: readonly DemoStory[] = [
  story(),
  story(send(4)),
  { ...story(send(5)), days: 14 },
  story(send(6), step(9, received), step(30, approved), step(41, paid("asked"))),
  story(send(5), step(28, cut), step(40, paid("approved"))),
  story(send(6), step(30, refused("rejected", "no_authorization", "NO AUTH ON FILE"))),
];
