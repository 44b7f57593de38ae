import { expect, test } from "vitest";
import { claimLines, urgentFirst } from "@/app/today/claim-lines";
import { addDays, day } from "@/lib/calendar/day";

const today = day("2025-12-01");
const none = { toCorrect: [], unanswered: [], partsToKeep: { count: 0, firstUntil: undefined } };
const correct = (days: number) =>
  claimLines(
    { ...none, toCorrect: [{ claimNumber: "C-1", payer: "Hearth-Wick", resubmitBy: addDays(today, days) }] },
    today,
  )[0];

test("a claim to correct is urgent from seven days before its last day, the eighth is not", () => {
  expect([correct(7)?.status, correct(8)?.status]).toEqual(["act-now", "watch"]);
  expect(correct(3)?.reason).toBe("Hearth-Wick refused it — by Thu 4 Dec 2025, 3 days left");
});

test("on its last day it can still be sent again; the day after there is something to decide", () => {
  expect([correct(0)?.act, correct(-1)?.act]).toEqual([
    "Correct claim C-1 and send it again",
    "Decide about claim C-1",
  ]);
});

// Over 45 days is late: common practice, no source.
test("an answer is late by the days over forty-five", () => {
  const lines = claimLines(
    { ...none, unanswered: [{ claimNumber: "C-2", payer: "Hearth-Wick", sentOn: addDays(today, -46) }] },
    today,
  );
  expect(lines[0]?.reason).toContain("the answer is 1 day late");
});

test("parts to keep are one line, and none where nothing is kept", () => {
  const kept = { ...none, partsToKeep: { count: 3, firstUntil: day("2025-12-20") } };
  expect(claimLines(kept, today)).toMatchObject([{ act: "Keep 3 failed parts", status: "note" }]);
  expect(claimLines(none, today)).toEqual([]);
});

test("what must be done now stands above what is to be watched, whichever came first", () => {
  const lines = [correct(8), correct(2)].flatMap((line) => line ?? []);
  expect(urgentFirst(lines).map(({ status }) => status)).toEqual(["act-now", "watch"]);
});
