// Terms beside those of the makers: a maker's next year, which no unit falls under yet, and the plans of a contract
// provider, whose papers unit-contract.ts writes. They show the rules that the makers' present terms do not use. Every
// number is invented for the demo.

import { day } from "@/lib/calendar/day";
import { payItems } from "@/lib/domain/pay-item";
import type { Policy } from "@/lib/domain/policy";
import type { CoverTerm } from "@/lib/domain/policy-terms";
import { makerPolicies } from "./policies";

/** Every policy of the demo. */
export function demoPolicies(): readonly Policy[] {
  const present = makerPolicies();
  const dunmorrow = present.find(({ key }) => key === "dunmorrow_household");
  if (dunmorrow === undefined) throw new RangeError("makerPolicies: dunmorrow_household expected");
  return [
    ...present.map((policy) => (policy === dunmorrow ? { ...policy, effectiveTo: day("2026-12-31") } : policy)),
    nextYear(dunmorrow),
    extendedPlan(dunmorrow),
    homePlan(dunmorrow),
    trialPlan(dunmorrow),
  ];
}

/** Sold from 2027 on: registration, transfer, commercial use, a limit from manufacture, and clocks by receipt that roll. */
function nextYear(present: Policy): Policy {
  return {
    ...present,
    version: present.version + 1,
    effectiveFrom: day("2027-01-01"),
    sourceDocument: "Invented terms of Dunmorrow, edition 2027",
    approvedOn: day("2026-10-12"),
    start: {
      from: { ...present.start.from, plus: { n: 7, unit: "day" } },
      fallbacks: [...present.start.fallbacks, { event: "manufacture", plus: { n: 3, unit: "month" } }],
    },
    designation: "limited",
    terms: present.terms.map((line) => (line.covers.kind === "cosmetic" ? cosmeticFromDelivery(line) : line)),
    campaigns: [
      {
        key: "clamps",
        name: "Hose clamps of January 2027",
        serials: [{ from: "D27010000000", to: "D27049999999" }],
        component: "inlet_valve",
        startsOn: day("2027-02-01"),
        endsOn: day("2029-01-31"),
        pays: ["parts", "labour"],
        sourceDocument: "Invented bulletin 27-01",
      },
    ],
    registration: {
      within: { n: 60, unit: "day" },
      termIfRegistered: { n: 2, unit: "year" },
      termOtherwise: { n: 1, unit: "year" },
    },
    transfer: { kind: "register_within", within: { n: 90, unit: "day" } },
    use: { kind: "commercial_term", term: { n: 90, unit: "day" }, pays: ["parts"] },
    caps: [{ from: "manufacture", term: { n: 6, unit: "year" } }],
    tolling: true,
    replacementUnit: "new_term",
    authorization: { ...present.authorization, secondOf: ["control_board"], diagnosisOnly: true },
    clocks: {
      ...present.clocks,
      filing: {
        within: { n: 45, unit: "day" },
        anchorDay: "exclude",
        by: "receipt",
        roll: "next_business_day",
        holidays: [day("2027-01-01"), day("2027-12-24")],
      },
      partHold: { within: { n: 30, unit: "day" }, from: "paid" },
    },
  };
}

/** Damage to looks counts from a day after the delivery, that day included. */
function cosmeticFromDelivery(line: CoverTerm): CoverTerm {
  return { ...line, from: { event: "delivery", plus: { n: 1, unit: "day" } }, anchorDay: "include" };
}

const provider = "Larkfield Service Plans";

/** Bought apart from the maker's cover, follows it, and pays hours at a rate. */
function extendedPlan(present: Policy): Policy {
  const { maker: _, goodwill: __, campaigns: ___, ...rest } = present;
  return {
    ...rest,
    key: "larkfield_extended",
    version: 1,
    name: "Larkfield extended plan",
    payer: { kind: "contract", name: provider },
    effectiveFrom: day("2000-01-01"),
    sourceDocument: "Invented plan paper E-1",
    start: { from: { event: "maker_cover_end" }, fallbacks: [{ event: "contract_sale" }] },
    anchorDay: "include",
    classes: [],
    terms: [{ covers: { kind: "whole_unit" }, pays: payItems, term: { n: 3, unit: "year" } }],
    transfer: { kind: "follows_unit" },
    use: { kind: "household_only" },
    replacementPart: { kind: "remainder" },
    campaigns: [],
    contract: { type: "extended", deductibleCents: 0, perClaimLimitCents: 70_000 },
    pay: {
      labour: {
        kind: "hours",
        centsPerHour: 8800,
        entries: [
          { component: "drain_pump", hours: 1 },
          { component: "control_board", hours: 1.2 },
          { component: "compressor", hours: 4.5 },
        ],
        otherwiseHours: 1,
        capHours: 5,
      },
      trip: { kind: "per_mile", centsPerMile: 67.5, includedMiles: 20, capCents: 4000 },
      parts: { handlingPercent: 0, capCents: 50_000 },
      diagnosis: { kind: "flat", cents: 6000 },
    },
    authorization: { ...present.authorization, claimOverCents: 40_000 },
  };
}

/** A household's plan for all its appliances, with a wait, a deductible and a limit. */
function homePlan(present: Policy): Policy {
  const extended = extendedPlan(present);
  return {
    ...extended,
    key: "larkfield_home",
    name: "Larkfield home plan",
    sourceDocument: "Invented plan paper H-1",
    start: { from: { event: "contract_sale" }, fallbacks: [] },
    anchorDay: "exclude",
    decisiveEvent: "visit",
    terms: [{ covers: { kind: "whole_unit" }, pays: payItems, term: { n: 1, unit: "year" } }],
    contract: {
      type: "home_service",
      waiting: { n: 30, unit: "day" },
      deductibleCents: 10_000,
      perClaimLimitCents: 150_000,
    },
    pay: { ...extended.pay, labour: { kind: "cost", capCents: 30_000 }, trip: { kind: "cost", capCents: 5000 } },
  };
}

/** A plan on trial for a few models and serials, with the rules that no other policy here has; no paper names it yet. */
function trialPlan(present: Policy): Policy {
  const extended = extendedPlan(present);
  return {
    ...extended,
    key: "larkfield_trial",
    name: "Larkfield trial plan",
    effectiveFrom: day("2026-01-01"),
    sourceDocument: "Invented plan paper T-1",
    appliesTo: {
      productTypes: ["front_load_washer", "dishwasher"],
      models: ["BHF27", "VTD52"],
      serials: [{ from: "B26010000000", to: "B26529999999" }],
    },
    designation: "full",
    decisiveEvent: "completed",
    transfer: { kind: "original_purchaser_only" },
    use: { kind: "any" },
    replacementPart: { kind: "own_term", term: { n: 1, unit: "year" }, pays: ["parts"], combine: "own_term_only" },
    repeat: { within: { n: 60, unit: "day" }, same: "component" },
    pay: { ...extended.pay, trip: { kind: "included" } },
  };
}
