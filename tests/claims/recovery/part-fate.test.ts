import { describe, expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { type FateEntry, fateProblem } from "@/lib/claims/recovery/part-fate";
import type { PartHold } from "@/lib/claims/recovery/part-hold";

const today = day("2026-10-31");
const entry: FateEntry = { fate: "scrapped", on: day("2026-10-20"), tag: "T-9", by: "Ana", reason: "" };
const ask = (changes: Partial<FateEntry>, hold: PartHold = { kind: "may go", from: day("2026-10-20") }) =>
  fateProblem({ hold, sentOn: day("2026-08-01"), entry: { ...entry, ...changes }, today });

// Common practice, no source: a part is kept through its last day and may be scrapped from the day after.
describe("scrapping", () => {
  test("is entered from the day after the last day of keeping, and asks for a reason on that day itself", () => {
    expect(ask({})).toBeUndefined();
    expect(ask({ on: day("2026-10-19") })).toContain("Say why it was scrapped all the same");
    expect(ask({ on: day("2026-10-19"), reason: "The shelf was flooded." })).toBeUndefined();
  });

  test.each<[PartHold, string]>([
    [{ kind: "keep until", until: day("2026-11-30") }, "until 30 Nov 2026"],
    [{ kind: "keep until paid" }, "until the claim is paid"],
    [{ kind: "keep for audit" }, "while the audit is open"],
  ])("of a part to %o asks for a reason", (hold, until) => {
    expect(ask({}, hold)).toContain(until);
    expect(ask({ reason: "The payer’s letter of 3 October released it." }, hold)).toBeUndefined();
    expect(ask({ fate: "sent back" }, hold)).toBeUndefined();
  });

  test("of a part of a claim that was given up asks for nothing", () => {
    expect(ask({}, { kind: "may go", from: undefined })).toBeUndefined();
  });
});

test.each<[string, Partial<FateEntry>, string]>([
  ["a day to come", { on: day("2026-11-01") }, "is still to come"],
  ["a day before the claim was sent", { on: day("2026-07-31") }, "before the claim was sent"],
  ["nobody", { by: " " }, "Say who"],
])("%s is refused in a sentence", (_name, changes, sentence) => {
  expect(ask({ ...changes, reason: "Given." })).toContain(sentence);
});
