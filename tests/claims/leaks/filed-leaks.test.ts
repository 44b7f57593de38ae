import { expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { type FiledClaim, filedLeaks } from "@/lib/claims/leaks/filed-leaks";
import type { ClaimState, LineStanding } from "@/lib/claims/life/claim-standing";
import { samplePolicy } from "../../coverage/sample-policy";

const line = (number: number, item: LineStanding["item"], paidCents: number): LineStanding => ({
  line: number,
  item,
  askedCents: 1000,
  approvedCents: undefined,
  paidCents,
  clawedBackCents: 0,
});

function leaksOf(state: ClaimState, lines: readonly LineStanding[]) {
  const claim: FiledClaim = {
    claimNumber: "C-1",
    payer: "Hearth-Wick",
    currency: "USD",
    standing: { state, lines, answeredOn: day("2025-03-01"), paidOn: undefined },
    resubmitBy: day("2025-03-31"),
    clocks: samplePolicy({}).clocks,
  };
  return filedLeaks(claim).map(({ leak, cents }) => [leak, cents.parts, cents.labour]);
}

test("labour paid and the part not is a credit that was never posted; anything else cut is short pay", () => {
  expect(leaksOf("short-paid", [line(1, "parts", 0), line(2, "labour", 1000)])).toEqual([["part credit", 1000, 0]]);
  expect(leaksOf("short-paid", [line(1, "parts", 1000), line(2, "labour", 400)])).toEqual([["short-paid", 0, 600]]);
  expect(leaksOf("short-paid", [line(1, "parts", 0), line(2, "labour", 400)])).toEqual([
    ["part credit", 1000, 0],
    ["short-paid", 0, 600],
  ]);
});

test("what was sent back and not corrected leaks whole; what is pursued or given up does not leak", () => {
  const lines = [line(1, "parts", 0), line(2, "labour", 0)];
  expect(leaksOf("rejected", lines)).toEqual([["not corrected", 1000, 1000]]);
  for (const state of ["sent", "appealed", "written off", "in audit", "paid"] as const)
    expect(leaksOf(state, lines)).toEqual([]);
});
