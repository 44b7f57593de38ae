import { expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { partHold } from "@/lib/claims/recovery/part-hold";

const today = day("2026-10-31");

test("a part is kept through its last day and may go on the day after", () => {
  const until = (keepUntil: string) => partHold({ state: "paid", keepUntil: day(keepUntil) }, today);
  expect(until("2026-10-31")).toEqual({ kind: "keep until", until: "2026-10-31" });
  expect(until("2026-10-30")).toEqual({ kind: "may go", from: "2026-10-31" });
});

test("a clock that begins with the payment holds the part until there is one, unless the claim was given up", () => {
  expect(partHold({ state: "sent", keepUntil: undefined }, today)).toEqual({ kind: "keep until paid" });
  expect(partHold({ state: "rejected", keepUntil: undefined }, today)).toEqual({ kind: "keep until paid" });
  expect(partHold({ state: "written off", keepUntil: undefined }, today)).toEqual({ kind: "may go", from: undefined });
});

test("an audit keeps the part whatever the clock says", () => {
  expect(partHold({ state: "in audit", keepUntil: day("2026-01-01") }, today)).toEqual({ kind: "keep for audit" });
});
