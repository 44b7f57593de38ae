import { describe, expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import type { ClaimAct, LineAmount } from "@/lib/claims/life/claim-act";
import { claimStanding } from "@/lib/claims/life/claim-standing";
import { actsAfter, claimDeadlines, judgeAct } from "@/lib/claims/life/judge-act";
import type { PolicyClocks } from "@/lib/domain/policy-clocks";

// The order of states is that of the trade's own flow: draft, sent, received, paid or short-paid, needs correction or
// rejected, resubmitted, appealed, written off, audit, claw-back (common practice, no source).

const lines = [
  { line: 1, item: "parts", cents: 8_000 },
  { line: 2, item: "labour", cents: 6_500 },
] as const;

const sent: ClaimAct = { what: "sent", on: day("2026-03-02"), sha256: "a".repeat(64), lines };
const rejected: ClaimAct = {
  what: "answered",
  on: day("2026-03-20"),
  answer: { kind: "rejected", reason: "purchase_date", payerText: "POP INVALID" },
};

describe("a claim's way", () => {
  test("paid in full leaves nothing open", () => {
    const standing = standingAfter(sent, approved(8_000, 6_500), paid(8_000, 6_500));
    expect(standing).toMatchObject({ state: "paid", askedCents: 14_500, paidCents: 14_500, openCents: 0 });
  });

  test("a line paid short leaves its rest open, and the line says so", () => {
    const standing = standingAfter(sent, approved(8_000, 5_000), paid(8_000, 5_000));
    expect(standing).toMatchObject({ state: "short-paid", approvedCents: 13_000, openCents: 1_500 });
    expect(standing.lines[1]).toMatchObject({ askedCents: 6_500, approvedCents: 5_000, paidCents: 5_000 });
  });

  test("two payments of one claim add up", () => {
    expect(standingAfter(sent, paid(8_000, 0), paid(0, 6_500)).state).toBe("paid");
  });

  test("filing again after a rejection counts as the second filing and keeps the first day", () => {
    const again: ClaimAct = { ...sent, on: day("2026-03-25") };
    expect(standingAfter(sent, rejected, again)).toMatchObject({
      state: "sent",
      filings: 2,
      firstSentOn: "2026-03-02",
      lastSentOn: "2026-03-25",
    });
  });

  test("a claw-back after an audit closes it, with what was taken named apart from what was paid", () => {
    const back: ClaimAct = {
      what: "clawed back",
      on: day("2026-09-01"),
      reference: "A-7",
      reason: "documents_missing",
      payerText: "no signature",
      lines: [{ line: 2, cents: 6_500 }],
    };
    const audit: ClaimAct = { what: "audit opened", on: day("2026-08-01"), reference: "A-7" };
    expect(standingAfter(sent, paid(8_000, 6_500), audit, back)).toMatchObject({
      state: "clawed back",
      paidCents: 14_500,
      clawedBackCents: 6_500,
      openCents: 0,
    });
  });

  test("written off is settled, and money that comes all the same is still taken", () => {
    const off: ClaimAct = { what: "written off", on: day("2026-05-01"), reason: "not worth an appeal" };
    expect(standingAfter(sent, rejected, off).openCents).toBe(0);
    expect(refusalAfter([sent, rejected, off], paid(8_000, 6_500))).toBeUndefined();
  });
});

describe("what may not happen", () => {
  test.each<[string, readonly ClaimAct[], ClaimAct, RegExp]>([
    ["a draft can't be paid", [], paid(1, 1), /draft can't be paid/],
    ["a paid claim can't be sent", [sent, paid(8_000, 6_500)], sent, /paid can't be sent/],
    ["an answer can't come before the filing", [sent], { ...rejected, on: day("2026-03-01") }, /before 2026-03-02/],
    ["no line of another claim", [sent], paid(1, 1, 9), /Line 9 is not a line/],
    ["not more than was asked", [sent], approved(9_000, 0), /more was approved than was asked/],
    ["no more taken back than was paid", [sent, paid(100, 0)], clawBack(101), /more would be taken back/],
    ["no part of a cent", [sent], paid(0.5, 0), /whole cents/],
    ["no empty claim", [], { ...sent, lines: [] }, /asks for nothing/],
  ])("%s", (_name, before, act, sentence) => {
    expect(refusalAfter(before, act)?.sentence).toMatch(sentence);
  });

  test("whatever is allowed leads to a state from which the list goes on", () => {
    for (const acts of Object.values(actsAfter)) expect(new Set(acts).size).toBe(acts.length);
    expect(
      refusalAfter([sent, rejected], { what: "appealed", on: day("2026-04-01"), ground: "receipt attached" }),
    ).toBe(undefined);
  });
});

describe("its clocks", () => {
  const clocks: PolicyClocks = {
    filing: { within: { n: 30, unit: "day" }, anchorDay: "exclude", by: "sending", roll: "none" },
    resubmission: { within: { n: 1, unit: "month" }, times: 1 },
    partHold: { within: { n: 30, unit: "day" }, from: "paid" },
  };

  test("a correction has its own clock from the answer, and only as often as the policy says", () => {
    expect(claimDeadlines(standingAfter(sent, rejected), clocks)).toMatchObject({
      resubmitBy: "2026-04-20",
      mayFileAgain: true,
    });
    const again: ClaimAct = { ...sent, on: day("2026-03-25") };
    const twice = standingAfter(sent, rejected, again, { ...rejected, on: day("2026-04-02") });
    expect(claimDeadlines(twice, clocks)).toMatchObject({ resubmitBy: undefined, mayFileAgain: false });
  });

  test("the failed part is kept from payment where the policy counts from payment", () => {
    expect(claimDeadlines(standingAfter(sent), clocks).keepPartUntil).toBeUndefined();
    expect(claimDeadlines(standingAfter(sent, paid(8_000, 6_500)), clocks).keepPartUntil).toBe("2026-05-01");
  });
});

function approved(parts: number, labour: number): ClaimAct {
  const answer = { kind: "approved", lines: two(parts, labour), reason: undefined, payerText: "" } as const;
  return { what: "answered", on: day("2026-03-20"), answer };
}

function paid(parts: number, labour: number, firstLine = 1): ClaimAct {
  return { what: "paid", on: day("2026-04-01"), reference: "R-1", lines: two(parts, labour, firstLine) };
}

function clawBack(cents: number): ClaimAct {
  const more = { reference: "A-1", reason: "other", payerText: "", lines: [{ line: 1, cents }] } as const;
  return { what: "clawed back", on: day("2026-09-01"), ...more };
}

function two(parts: number, labour: number, firstLine = 1): LineAmount[] {
  return [
    { line: firstLine, cents: parts },
    { line: 2, cents: labour },
  ];
}

function eventsOf(acts: readonly ClaimAct[]) {
  return [{ what: "built" } as const, ...acts].map((act, index) => ({ number: index + 1, act }));
}

function standingAfter(...acts: ClaimAct[]) {
  return claimStanding(eventsOf(acts));
}

function refusalAfter(before: readonly ClaimAct[], act: ClaimAct) {
  return judgeAct(eventsOf(before), act);
}
