// Who pays when several could, what stops cover, and properties that hold whatever the dates. Order of payers and of
// rules: common practice, no source, where a test names no other.
import { describe, expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { readRawDay } from "@/lib/calendar/raw-day";
import type { CoverageFacts } from "@/lib/coverage/coverage-facts";
import { datedFact } from "@/lib/coverage/dated-fact";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import { knownDay, knownRange } from "@/lib/coverage/known-date";
import { payItems } from "@/lib/domain/pay-item";
import type { Policy } from "@/lib/domain/policy";
import type { Campaign } from "@/lib/domain/policy-campaign";
import { sampleFacts } from "./sample-facts";
import { samplePolicy } from "./sample-policy";

const bought = (on: string) => ({ dates: { purchase: knownDay(day(on), "receipt") } });
const recent = { unit: bought("2025-06-01") };
const campaign: Campaign = {
  key: "pump-fix",
  name: "Pump fix",
  serials: [{ from: "A1000000", to: "A1499999" }],
  component: "drain_pump",
  endsOn: day("2027-12-31"),
  pays: ["parts", "labour"],
  sourceDocument: "Bulletin",
};
const contract = samplePolicy({
  key: "plan",
  name: "Plan",
  payer: { kind: "contract", name: "Plan company" },
  start: { from: { event: "contract_sale" }, fallbacks: [] },
  terms: [{ covers: { kind: "whole_unit" }, pays: payItems, term: { n: 3, unit: "year" } }],
  contract: { type: "extended" },
});
const withPlan = { contracts: [{ number: "1", policy: "plan", soldOn: day("2024-04-01"), cancelledOn: undefined }] };

function payersOf(facts: CoverageFacts, policies: readonly Policy[]) {
  const { items } = decideCoverage(facts, policies);
  return payItems.map((item) => {
    const decision = items[item];
    return decision.verdict === "covered" ? decision.by.payerKind : decision.verdict;
  });
}

function reasonOf(facts: CoverageFacts, policies: readonly Policy[]) {
  const { parts } = decideCoverage(facts, policies).items;
  return "reason" in parts ? parts.reason : parts.verdict;
}

describe("order of payers, pay item by pay item", () => {
  test("a campaign pays its own items first and the maker the rest", () => {
    expect(payersOf(sampleFacts(recent), [samplePolicy({ campaigns: [campaign] })])).toEqual([
      "campaign",
      "campaign",
      "maker",
      "maker",
    ]);
  });

  test("the maker pays parts while the contract takes over what has ended", () => {
    const maker = samplePolicy({
      classes: [{ key: "pumps", name: "Pumps", members: ["drain_pump"] }],
      terms: [
        { covers: { kind: "whole_unit" }, pays: payItems, term: { n: 1, unit: "year" } },
        { covers: { kind: "class", class: "pumps" }, pays: ["parts"], term: { n: 5, unit: "year" } },
      ],
    });
    expect(payersOf(sampleFacts(withPlan), [contract, maker])).toEqual(["maker", "contract", "contract", "contract"]);
  });

  test("on a day both cover the maker is primary, whatever the order of the list", () => {
    const facts = sampleFacts({ ...withPlan, ...recent });
    for (const policies of [
      [contract, samplePolicy()],
      [samplePolicy(), contract],
    ]) {
      const decision = decideCoverage(facts, policies);
      expect(payersOf(facts, policies)).toEqual(["maker", "maker", "maker", "maker"]);
      expect(decision.lost.map(({ source, reason }) => [source.payerKind, reason])).toEqual([
        ["contract", "another_payer_first"],
      ]);
    }
  });

  test("an own guarantee stands between maker and contract, and only after a repair", () => {
    const own = samplePolicy({
      key: "own",
      payer: { kind: "own_guarantee", name: "Servicer" },
      start: { from: { event: "previous_repair" }, fallbacks: [] },
      terms: [{ covers: { kind: "whole_unit" }, pays: ["labour"], term: { n: 30, unit: "day" } }],
    });
    const repaired = { ...withPlan, previousRepairOn: day("2025-11-01") };
    expect(payersOf(sampleFacts(repaired), [contract, own])).toEqual([
      "contract",
      "own_guarantee",
      "contract",
      "contract",
    ]);
    expect(payersOf(sampleFacts(withPlan), [contract, own])).toEqual(["contract", "contract", "contract", "contract"]);
  });

  test("while it is open whether the maker pays, the contract is not asked", () => {
    const facts = sampleFacts({ ...withPlan, unit: { dates: {} } });
    expect(payersOf(facts, [samplePolicy(), contract])).toEqual(Array(4).fill("needs_evidence"));
    expect(reasonOf(facts, [samplePolicy(), contract])).toBe("start_unknown");
  });
});

describe("campaigns", () => {
  const old = { unit: { ...bought("2018-05-05") } };
  const policy = samplePolicy({ campaigns: [campaign] });
  test.each([
    ["first serial of the range", { unit: { ...old.unit, serial: "A1000000" } }, "covered"],
    ["last serial of the range, written with dashes", { unit: { ...old.unit, serial: "a149-9999" } }, "covered"],
    ["one past the range", { unit: { ...old.unit, serial: "A1500000" } }, "term_ended"],
    ["a longer serial that sorts inside", { unit: { ...old.unit, serial: "A12345678" } }, "term_ended"],
    ["another component", { ...old, component: "inlet_valve" }, "term_ended"],
    ["its last day", { ...old, reported: day("2027-12-31"), completed: undefined }, "covered"],
    ["the day after its last", { ...old, reported: day("2028-01-01"), completed: undefined }, "term_ended"],
    ["no serial: the plate would settle it", { unit: { ...old.unit, serial: undefined } }, "serial_unknown"],
  ] as const)("%s", (_name, changes, expected) => {
    expect(reasonOf(sampleFacts(changes), [policy])).toBe(expected);
  });

  test("a unit without serial is still the maker's while its term runs", () => {
    expect(payersOf(sampleFacts({ unit: { ...recent.unit, serial: undefined } }), [policy])[0]).toBe("maker");
  });
});

describe("what stops cover, while the days are still shown", () => {
  const owner = (registered: string | undefined) => ({
    number: 2,
    acquiredOn: day("2025-08-01"),
    transferRegisteredOn: registered === undefined ? undefined : day(registered),
  });
  const within: Partial<Policy> = { transfer: { kind: "register_within", within: { n: 90, unit: "day" } } };
  test.each<[string, Partial<Policy>, Parameters<typeof sampleFacts>[0], string]>([
    [
      "commercial use",
      { use: { kind: "household_only" } },
      { unit: { ...recent.unit, use: "commercial" } },
      "use_excluded",
    ],
    [
      "another state",
      { territories: ["US-CA"] },
      { unit: { ...recent.unit, territory: "US-NV" } },
      "territory_excluded",
    ],
    ["a state of the country", { territories: ["US"] }, { unit: { ...recent.unit, territory: "US-NV" } }, "covered"],
    ["territory nobody knows", { territories: ["US"] }, recent, "territory_unknown"],
    [
      "second owner",
      { transfer: { kind: "original_purchaser_only" } },
      { unit: { ...recent.unit, owner: owner(undefined) } },
      "transfer_excluded",
    ],
    // 1 August 2025 + 90 days = 30 October 2025.
    ["transfer registered on day 90", within, { unit: { ...recent.unit, owner: owner("2025-10-30") } }, "covered"],
    [
      "transfer registered on day 91",
      within,
      { unit: { ...recent.unit, owner: owner("2025-10-31") } },
      "transfer_excluded",
    ],
    [
      "transfer of unknown day",
      within,
      { unit: { ...recent.unit, owner: { ...owner(undefined), acquiredOn: undefined } } },
      "transfer_date_unknown",
    ],
    ["an excluded component", { excludedComponents: ["drain_pump"] }, recent, "component_excluded"],
    ["an outside cause that the list forgot", {}, { ...recent, cause: "foreign_object" }, "cause_excluded"],
  ])("%s", (_name, policy, changes, expected) => {
    const facts = sampleFacts(changes);
    expect(reasonOf(facts, [samplePolicy(policy)])).toBe(expected);
    expect(decideCoverage(facts, [samplePolicy(policy)]).items.parts).toHaveProperty(
      "window.last.latest",
      "2026-06-01",
    );
  });

  test("a cancelled contract covers the day of cancelling and not the next", () => {
    const cancelled = {
      contracts: [{ number: "1", policy: "plan", soldOn: day("2024-04-01"), cancelledOn: day("2025-11-21") }],
    };
    expect(reasonOf(sampleFacts(cancelled), [contract])).toBe("covered");
    expect(reasonOf(sampleFacts({ ...cancelled, reported: day("2025-11-22") }), [contract])).toBe("contract_cancelled");
  });
});

describe("versions and scope", () => {
  const versions = [
    samplePolicy({
      version: 1,
      effectiveTo: day("2023-12-31"),
      terms: [{ covers: { kind: "whole_unit" }, pays: payItems, term: { n: 5, unit: "year" } }],
    }),
    samplePolicy({ version: 2, effectiveFrom: day("2024-01-01") }),
  ];
  test.each([
    ["2023-12-31", "covered"],
    ["2024-01-01", "not_covered"],
  ])("bought %s", (on, verdict) => {
    expect(decideCoverage(sampleFacts({ unit: bought(on) }), versions).verdict).toBe(verdict);
  });

  test("another maker's terms, another model's and another range of serials do not speak of the unit", () => {
    for (const policy of [
      samplePolicy({ maker: "Other" }),
      samplePolicy({ appliesTo: { productTypes: [], models: ["X"], serials: [] } }),
      samplePolicy({ appliesTo: { productTypes: ["dishwasher"], models: [], serials: [] } }),
      samplePolicy({ appliesTo: { productTypes: [], models: [], serials: [{ from: "B0000000", to: "B9999999" }] } }),
    ]) {
      expect(reasonOf(sampleFacts(recent), [policy])).toBe("no_policy");
    }
  });
});

describe("what is not known is asked for", () => {
  const pumps = samplePolicy({
    classes: [{ key: "pumps", name: "Pumps", members: ["drain_pump"] }],
    terms: [
      { covers: { kind: "whole_unit" }, pays: payItems, term: { n: 1, unit: "year" } },
      { covers: { kind: "class", class: "pumps" }, pays: ["parts"], term: { n: 2, unit: "year" } },
    ],
  });
  test("no component named: a class of parts may still cover, and only while its term runs", () => {
    expect(reasonOf(sampleFacts({ component: undefined }), [pumps])).toBe("component_unknown");
    expect(
      reasonOf(sampleFacts({ component: undefined, reported: day("2026-03-15"), completed: undefined }), [pumps]),
    ).toBe("term_ended");
    expect(reasonOf(sampleFacts({ ...recent, component: undefined }), [pumps])).toBe("covered");
  });

  test("a cause that nobody determined", () => {
    expect(reasonOf(sampleFacts({ ...recent, cause: "not_determined" }), [pumps])).toBe("cause_unknown");
  });

  test("a date that reads two ways, where the two give different answers", () => {
    const raw = "03/04/2025";
    const unit = { dates: { purchase: datedFact(readRawDay(raw), raw, undefined) } };
    const facts = sampleFacts({ unit, reported: day("2026-03-20"), completed: undefined });
    expect(reasonOf(facts, [samplePolicy()])).toBe("ambiguous_date");
  });
});

test("an impossible order of dates decides nothing and names the two", () => {
  const early = {
    dates: {
      purchase: knownDay(day("2024-01-05")),
      manufacture: knownRange({ earliest: day("2024-03-01"), latest: day("2024-03-31") }),
    },
  };
  expect(decideCoverage(sampleFacts({ unit: early }), [samplePolicy()]).items.labour).toEqual({
    verdict: "invalid_data",
    problem: "purchase_before_manufacture",
  });
});

test("every rule that was looked at is told, in its order", () => {
  const steps = decideCoverage(sampleFacts(recent), [samplePolicy({ campaigns: [campaign] })]).looked.map(
    (look) => look.step,
  );
  expect([...new Set(steps)]).toEqual([
    "data_sane",
    "campaign",
    "start",
    "term",
    "use",
    "territory",
    "transfer",
    "exclusion",
    "payer_order",
    "statute",
  ]);
});
