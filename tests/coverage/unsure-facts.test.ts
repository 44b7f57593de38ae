// Whatever is not known for certain is asked for, and only where it matters. Common practice, no source.
import { describe, expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { monthRange } from "@/lib/calendar/day-range";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import { knownDay, knownRange } from "@/lib/coverage/known-date";
import { payItems } from "@/lib/domain/pay-item";
import type { Policy } from "@/lib/domain/policy";
import { sampleFacts } from "./sample-facts";
import { samplePolicy } from "./sample-policy";

type Facts = Parameters<typeof sampleFacts>[0];

function parts(facts: Facts, ...policies: readonly Policy[]) {
  const { parts: item } = decideCoverage(sampleFacts(facts), policies).items;
  return "reason" in item ? item.reason : item.verdict;
}

const years = (n: number) => ({
  terms: [{ covers: { kind: "whole_unit" as const }, pays: payItems, term: { n, unit: "year" as const } }],
});
const campaign = {
  key: "pump",
  name: "Pump",
  serials: [{ from: "A1000000", to: "A1499999" }],
  component: "drain_pump",
  pays: payItems,
  sourceDocument: "Bulletin",
};

describe("a sale known only by its month, between two versions", () => {
  const dates = { purchase: knownRange(monthRange(2024, 1)) };
  const earlyTerms = (n: number) => samplePolicy({ version: 1, effectiveTo: day("2024-01-15"), ...years(n) });
  const lateTerms = (n: number) => samplePolicy({ version: 2, effectiveFrom: day("2024-01-16"), ...years(n) });
  test("versions that disagree ask for the receipt", () => {
    const facts = { reported: day("2025-06-01"), completed: undefined, unit: { dates } };
    expect(parts(facts, earlyTerms(5), lateTerms(1))).toBe("ends_differ");
    expect(parts(facts, earlyTerms(1), lateTerms(5))).toBe("ends_differ");
  });
  test("versions that agree decide", () => {
    const facts = { reported: day("2024-12-01"), completed: undefined, unit: { dates } };
    expect(parts(facts, earlyTerms(5), lateTerms(1))).toBe("covered");
  });
});

describe("a campaign that a later version brings", () => {
  const old = samplePolicy({ version: 1, effectiveTo: day("2020-12-31") });
  const late = samplePolicy({ version: 2, effectiveFrom: day("2021-01-01"), campaigns: [campaign] });
  const facts = { unit: { dates: { purchase: knownDay(day("2018-05-05"), "receipt") } } };
  test("reaches units that were sold under an earlier one", () => {
    expect(parts(facts, old, late)).toBe("covered");
    expect(parts(facts, old)).toBe("term_ended");
  });
  test("the newest version that names it decides its end", () => {
    const ended = samplePolicy({
      version: 3,
      effectiveFrom: day("2022-01-01"),
      campaigns: [{ ...campaign, endsOn: day("2024-12-31") }],
    });
    expect(parts(facts, old, { ...late, effectiveTo: day("2021-12-31") }, ended)).toBe("term_ended");
  });
  test("another maker's campaign does not", () => {
    expect(parts(facts, old, { ...late, maker: "Other" })).toBe("term_ended");
  });
});

test("a part's own term that has ended leaves the unknown remainder open", () => {
  const policy = samplePolicy({
    replacementPart: {
      kind: "own_term",
      term: { n: 90, unit: "day" },
      pays: ["parts"],
      combine: "later_of_with_remainder",
    },
  });
  const unknown = { replacedPartFittedOn: day("2025-01-01"), unit: { dates: {} } };
  expect(parts(unknown, policy)).toBe("start_unknown");
  expect(parts({ ...unknown, replacedPartFittedOn: day("2025-11-01") }, policy)).toBe("covered");
});

test("where nothing was found to have failed only the visit may be paid", () => {
  const { items } = decideCoverage(
    sampleFacts({ cause: "no_fault_found", unit: { dates: { purchase: knownDay(day("2025-06-01"), "receipt") } } }),
    [samplePolicy()],
  );
  expect(payItems.map((item) => items[item].verdict)).toEqual(["not_covered", "not_covered", "not_covered", "covered"]);
});

describe("a contract by its paper", () => {
  const plan = samplePolicy({
    key: "plan",
    payer: { kind: "contract", name: "Plan company" },
    start: { from: { event: "contract_sale" }, fallbacks: [] },
    contract: { type: "extended", waiting: { n: 30, unit: "day" } },
    ...years(1),
  });
  const paper = (changes: object = {}) => ({
    contracts: [
      {
        number: "1",
        policy: "plan",
        soldOn: day("2024-06-01"),
        cancelledOn: undefined,
        stated: { startsOn: day("2025-01-01"), endsOn: day("2026-06-30") },
        ...changes,
      },
    ],
  });
  test.each([
    ["the day before its first", "2024-12-31", {}, "not_started"],
    ["its first day", "2025-01-01", {}, "covered"],
    ["its last day, past the year of the plan", "2026-06-30", {}, "covered"],
    ["the day after", "2026-07-01", {}, "term_ended"],
    // Ten days after the first one do not pay: 2 to 11 January, and the first itself.
    ["the last day of its own wait", "2025-01-11", { waitDays: 10 }, "waiting_period"],
    ["the day after its own wait", "2025-01-12", { waitDays: 10 }, "covered"],
    ["cancelled the day before", "2025-03-02", { cancelledOn: day("2025-03-01") }, "contract_cancelled"],
  ])("%s (%s)", (_name, reported, changes, expected) => {
    const facts = { ...paper(changes), reported: day(reported), completed: undefined, unit: { dates: {} } };
    expect(parts(facts, plan)).toBe(expected);
  });
});

test("the other way of counting is that of the end which governs", () => {
  const policy = samplePolicy({ caps: [{ from: "manufacture", term: { n: 18, unit: "month" } }] });
  const dates = { purchase: knownDay(day("2025-05-01"), "receipt"), manufacture: knownDay(day("2024-02-10")) };
  const decision = decideCoverage(sampleFacts({ reported: day("2025-08-10"), completed: undefined, unit: { dates } }), [
    policy,
  ]);
  expect(decision.items.parts).toHaveProperty("boundary", {
    kind: "last_day",
    lastDay: "2025-08-10",
    underOtherCounting: "2025-08-09",
  });
});
