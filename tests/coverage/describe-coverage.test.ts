import { expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { monthRange } from "@/lib/calendar/day-range";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import { describeCoverage } from "@/lib/coverage/describe-coverage";
import { knownDay, knownRange } from "@/lib/coverage/known-date";
import { payItems } from "@/lib/domain/pay-item";
import { sampleFacts } from "./sample-facts";
import { samplePolicy } from "./sample-policy";

const twoYears = samplePolicy({
  terms: [{ covers: { kind: "whole_unit" }, pays: payItems, term: { n: 24, unit: "month" } }],
});

const words = (facts: Parameters<typeof sampleFacts>[0], policy = twoYears) =>
  describeCoverage(decideCoverage(sampleFacts(facts), [policy]));

test("the sum is shown with the paper, the term as written and the days left", () => {
  expect(words({}).arithmetic).toEqual([
    "Bought 14 Mar 2024 (receipt) + 24 months = 14 Mar 2026. Reported 21 Nov 2025: inside by 113 days.",
  ]);
});

test("the last day, the day after, and a day well past it are told apart", () => {
  expect(words({ reported: day("2026-03-14"), completed: undefined }).arithmetic[0]).toContain(
    "inside, on the last day.",
  );
  const after = words({ reported: day("2026-03-15"), completed: undefined });
  expect(after.arithmetic[0]).toContain("outside by 1 day.");
  expect(after.boundary[0]).toContain("the day after the last covered day, 14 Mar 2026");
  expect(words({ reported: day("2026-04-15"), completed: undefined }).boundary).toEqual([]);
});

test("a cap, a range and a document that would settle it are named", () => {
  const made = { manufacture: knownRange(monthRange(2024, 6)) };
  const policy = samplePolicy({
    start: { from: { event: "purchase" }, fallbacks: [{ event: "manufacture", plus: { n: 3, unit: "month" } }] },
  });
  const range = words({ reported: day("2025-09-15"), unit: { dates: made } }, policy);
  expect(range.arithmetic[0]).toContain("between 1 Sep 2025 and 30 Sep 2025");
  expect(range.items[0]?.sentence).toBe(
    "Parts: needs evidence (proof of purchase): the start is known only as a range, and its two ends give different answers.",
  );
  const capped = words(
    { unit: { dates: { purchase: knownDay(day("2024-12-01"), "receipt"), manufacture: knownDay(day("2024-02-10")) } } },
    samplePolicy({ caps: [{ from: "manufacture", term: { n: 18, unit: "month" } }] }),
  );
  expect(capped.arithmetic[0]).toContain(
    "Limit from 10 Feb 2024 + 18 months = 10 Aug 2025. Of these 10 Aug 2025 governs.",
  );
});

test("whatever is decided, nobody is told that they have no rights", () => {
  const ended = words({ reported: day("2027-01-01"), completed: undefined });
  expect(ended.statutory[0]).toBe("Maker term ended; local statutory rights may remain.");
  for (const facts of [{}, { unit: { dates: {} } }, { reported: day("2020-01-01") }, { cause: "supply" as const }]) {
    const all = JSON.stringify(words(facts));
    expect(all).not.toMatch(/no rights/i);
    expect(all).toContain("local law decide");
  }
});
