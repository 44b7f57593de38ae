import { day } from "@/lib/calendar/day";
import { payItems } from "@/lib/domain/pay-item";
import type { Policy } from "@/lib/domain/policy";

/** A policy that asks for nothing special; tests change the one thing they are about. */
export function samplePolicy(changes: Partial<Policy> = {}): Policy {
  return {
    key: "maker-standard",
    version: 1,
    name: "Maker's standard cover",
    payer: { kind: "maker", name: "Maker" },
    appliesTo: { productTypes: [], models: [], serials: [] },
    effectiveFrom: day("1900-01-01"),
    sourceDocument: "Test policy",
    sourceMark: "invented for the demo",
    approvedBy: "Test",
    approvedOn: day("2020-01-01"),
    currency: "USD",
    start: { from: { event: "purchase" }, fallbacks: [{ event: "shipped" }] },
    anchorDay: "exclude",
    decisiveEvent: "reported",
    classes: [],
    terms: [{ covers: { kind: "whole_unit" }, pays: payItems, term: { n: 1, unit: "year" } }],
    caps: [],
    transfer: { kind: "follows_unit" },
    use: { kind: "any" },
    territories: [],
    replacementPart: { kind: "remainder" },
    replacementUnit: "remainder_of_original",
    tolling: false,
    excludedCauses: [],
    excludedComponents: [],
    campaigns: [],
    clocks: {
      filing: { within: { n: 30, unit: "day" }, anchorDay: "exclude", by: "sending", roll: "none" },
      resubmission: { within: { n: 30, unit: "day" }, times: 2 },
      partHold: { within: { n: 30, unit: "day" }, from: "paid" },
    },
    pay: {
      labour: { kind: "schedule", jobClasses: [], otherwiseCents: 6500 },
      trip: { kind: "included" },
      parts: { handlingPercent: 10 },
      diagnosis: { kind: "none" },
    },
    authorization: { components: [], withoutProofOfPurchase: false },
    ...changes,
  };
}
