// A contract on file whose plan's terms are not is asked for, never passed over. Common practice, no source.
import { describe, expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import { describeCoverage } from "@/lib/coverage/describe-coverage";
import type { Contract } from "@/lib/domain/contract";
import type { Policy } from "@/lib/domain/policy";
import { sampleFacts } from "./sample-facts";
import { samplePolicy } from "./sample-policy";

const contract: Contract = { number: "SC-7", policy: "plan", soldOn: day("2024-03-14"), cancelledOn: undefined };
const plan = samplePolicy({
  key: "plan",
  name: "Plan",
  payer: { kind: "contract", name: "Provider" },
  start: { from: { event: "contract_sale" }, fallbacks: [] },
  terms: [{ covers: { kind: "whole_unit" }, pays: ["parts", "labour"], term: { n: 3, unit: "year" } }],
  contract: { type: "extended" },
});

function decide(contracts: readonly Contract[], ...policies: readonly Policy[]) {
  return decideCoverage(sampleFacts({ contracts }), [samplePolicy(), ...policies]);
}

// The sample unit was bought on 14 March 2024 and reported on 21 November 2025: the maker's year is over.
describe("once the maker's cover is over", () => {
  test("a plan that is not on file is asked for, with the contract's number", () => {
    const decision = decide([contract]);
    expect(decision.verdict).toBe("needs_evidence");
    expect(describeCoverage(decision).items[0]?.sentence).toMatch(
      /^Parts: needs evidence on contract SC-7 \(service contract\): the terms of the contract’s plan are not on file/,
    );
    expect(decision.looked).toContainEqual(
      expect.objectContaining({ policy: "plan", outcome: "open", gave: "contract_terms_unknown" }),
    );
  });

  test("a plan without a version for the day of the sale is asked for too", () => {
    expect(decide([contract], { ...plan, effectiveFrom: day("2024-03-15") }).verdict).toBe("needs_evidence");
    expect(decide([contract], { ...plan, effectiveFrom: day("2024-03-14") }).verdict).toBe("covered");
  });

  test.each(["Plan", "PLAN", " plan "])("a plan named %j as on its paper is the policy of that name", (policy) => {
    expect(decide([{ ...contract, policy }], { ...plan, key: "provider_plan" }).verdict).toBe("covered");
  });

  test("a contract that names no plan is asked for", () => {
    expect(decide([{ ...contract, policy: "" }], plan).verdict).toBe("needs_evidence");
  });

  test("a plan that leaves out this kind of unit does not pay, and says so", () => {
    const decision = decide([contract], { ...plan, appliesTo: { ...plan.appliesTo, productTypes: ["dishwasher"] } });
    expect(decision.verdict).toBe("not_covered");
    expect(decision.lost).toContainEqual(expect.objectContaining({ reason: "plan_not_for_unit" }));
  });

  test("another contract that covers comes before the question", () => {
    const decision = decide([contract, { ...contract, number: "SC-8", policy: "other" }], plan);
    expect(decision.items.parts.verdict).toBe("covered");
    expect(decision.items.diagnosis.verdict).toBe("needs_evidence");
  });

  const over: readonly (readonly [string, Partial<Contract>])[] = [
    ["sold after the report", { soldOn: day("2025-11-22") }],
    ["cancelled before it", { cancelledOn: day("2025-11-20") }],
    ["over by its own paper", { stated: { startsOn: day("2024-03-14"), endsOn: day("2025-11-20") } }],
  ];
  test.each(over)("one %s can pay nothing, whatever its plan says", (_name, change) => {
    expect(decide([{ ...contract, ...change }]).verdict).toBe("not_covered");
  });
});

test("while the maker pays nobody asks for the contract's terms", () => {
  const facts = sampleFacts({ contracts: [contract], reported: day("2024-06-01"), firstVisit: undefined });
  expect(decideCoverage({ ...facts, completed: undefined }, [samplePolicy()]).verdict).toBe("covered");
});
