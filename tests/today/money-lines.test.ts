import { expect, test } from "vitest";
import { moneyLines } from "@/app/today/money-lines";
import { addDays, day } from "@/lib/calendar/day";

const today = day("2026-10-31");
const nothing = { kept: [], waitingLines: 0, partsToGo: 0 };
const short = (left: number | undefined) => ({
  leak: "short-paid" as const,
  claims: 2,
  sums: [{ currency: "USD" as const, cents: 9000 }],
  firstDay: left === undefined ? undefined : addDays(today, left),
});

test("nothing at payers is no line", () => {
  expect(moneyLines(nothing, today)).toEqual([]);
});

test("money that was cut is urgent from seven days before its first day to dispute, the eighth is not", () => {
  const statusOf = (left: number | undefined) => moneyLines({ ...nothing, kept: [short(left)] }, today)[0]?.status;
  expect([statusOf(7), statusOf(8), statusOf(undefined)]).toEqual(["act-now", "watch", "watch"]);
  expect(moneyLines({ ...nothing, kept: [short(3)] }, today)[0]).toMatchObject({
    act: "Dispute USD 90.00 that payers cut",
    href: "/claims/disputes",
    reason: "2 claims — the first by Tue 3 Nov 2026, 3 days left",
  });
});

test("credits never posted, lines that wait and parts that may go have a line each", () => {
  const kept = [{ ...short(10), leak: "part credit" as const, claims: 1 }];
  expect(moneyLines({ kept, waitingLines: 1, partsToGo: 2 }, today).map(({ act }) => act)).toEqual([
    "Ask for USD 90.00 of credits for parts never posted",
    "See to 1 line of payers’ lists",
    "Let the failed parts of 2 claims go",
  ]);
});
