// What one contract can still pay: of its limit for a claim and what is left of its limit over the whole term, the lower.
// Type of term in published service contracts.
import { expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { policyWithContract } from "@/lib/coverage/policy-with-contract";
import type { Contract } from "@/lib/domain/contract";
import { samplePolicy } from "./sample-policy";

const plan = samplePolicy({
  key: "plan",
  payer: { kind: "contract", name: "Provider" },
  contract: { type: "extended", deductibleCents: 7500, perClaimLimitCents: 50_000 },
});
const paper: Contract = { number: "SC-1", policy: "plan", soldOn: day("2025-01-01"), cancelledOn: undefined };
const taken = [
  { jobNumber: "J-1", cents: 60_000 },
  { jobNumber: "J-2", cents: 15_000 },
];

test.each<[string, Partial<Contract>, string | undefined, number | undefined]>([
  ["no limit of its own", {}, undefined, 50_000],
  ["a limit above that of one claim", { limitCents: 100_000 }, undefined, 50_000],
  ["a limit of which less is left", { limitCents: 100_000, taken }, undefined, 25_000],
  ["the job's own claim takes nothing from it", { limitCents: 100_000, taken }, "J-2", 40_000],
  ["a limit that is used up", { limitCents: 70_000, taken }, undefined, 0],
])("%s", (_name, more, jobNumber, most) => {
  const { contract } = policyWithContract(plan, [{ ...paper, ...more }], jobNumber);
  expect(contract).toMatchObject({ deductibleCents: 7500, perClaimLimitCents: most });
});

test("the paper's own deductible holds, and another plan's paper changes nothing", () => {
  expect(policyWithContract(plan, [{ ...paper, deductibleCents: 0 }]).contract?.deductibleCents).toBe(0);
  expect(policyWithContract(plan, [{ ...paper, policy: "other", limitCents: 1 }])).toBe(plan);
});
