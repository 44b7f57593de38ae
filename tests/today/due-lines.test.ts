import { expect, test } from "vitest";
import { dueLines, todayFinding } from "@/app/today/due-lines";
import type { ClaimableTotals } from "@/db/queries/claimable";
import { addDays, day } from "@/lib/calendar/day";

const today = day("2025-12-01");
const draft = (claimNumber: string, days: number) => ({
  claimNumber,
  payer: "Hearth-Wick",
  fileBy: addDays(today, days),
});
const nothing: ClaimableTotals = { cases: 0, soon: 0, firstDay: undefined, sums: [], payers: [] };
const lines = (drafts: readonly ReturnType<typeof draft>[], heldRows = 0, claimable = nothing) =>
  dueLines(
    { drafts, held: heldRows > 0 ? [{ batchId: 7, fileName: "jobs.csv", rows: heldRows }] : [], claimable },
    today,
  );

test("a draft is urgent from seven days before its filing day, the eighth is not", () => {
  expect(lines([draft("C-1", 7), draft("C-2", 8)]).map(({ status }) => status)).toEqual(["act-now", "watch"]);
});

test("a draft on its last day can still be filed; the day after there is something to decide", () => {
  expect(lines([draft("C-1", 0), draft("C-2", -1)]).map(({ act }) => act)).toEqual([
    "File claim C-1",
    "Decide about claim C-2",
  ]);
});

test("each line says who and by when", () => {
  expect(lines([draft("C 1/b", 3)])[0]).toMatchObject({
    reason: "Hearth-Wick — by Thu 4 Dec 2025, 3 days left",
    href: "/claims/C%201%2Fb",
  });
  expect(lines([], 1)[0]).toMatchObject({ act: "Correct 1 row held back", href: "/files/7" });
});

test("the finding names what is urgent, and does not call waiting rows urgent", () => {
  expect(todayFinding(lines([]))).toBe("Nothing is waiting");
  expect(todayFinding(lines([draft("C-1", 20)], 5))).toBe("2 things to see to, none of them urgent");
  expect(todayFinding(lines([draft("C-1", 2)], 5))).toBe("1 claim has 7 days or less to be filed");
  expect(todayFinding(lines([draft("C-1", 2), draft("C-2", -3)]))).toBe("2 claims have 7 days or less to be filed");
});

test("covered work without a claim is one line with its sums, its count and its first day", () => {
  const covered: ClaimableTotals = {
    cases: 2,
    soon: 1,
    firstDay: addDays(today, 2),
    sums: [
      { currency: "EUR", cents: 5000 },
      { currency: "USD", cents: 29323 },
    ],
    payers: ["Hearth-Wick"],
  };
  const found = lines([], 0, covered);
  expect(found).toMatchObject([
    {
      status: "act-now",
      act: "Claim EUR 50.00 and USD 293.23 of covered work",
      href: "/claims",
      reason: "2 cases, 1 with 7 days or less — the first by Wed 3 Dec 2025, 2 days left",
    },
  ]);
  expect(todayFinding(found)).toBe("1 claim has 7 days or less to be filed");
  expect(lines([], 0, { ...covered, soon: 0 })[0]?.status).toBe("watch");
});
