import { expect, test } from "vitest";
import { assembleClaim } from "@/lib/claims/assemble-claim";
import type { Claim } from "@/lib/claims/claim";
import type { ClaimCase } from "@/lib/claims/claim-case";
import type { PaySchedule } from "@/lib/domain/policy-pay";
import { samplePolicy } from "../coverage/sample-policy";
import { claimCase, makerPolicy, pumpRecord } from "./claim-case";

function claimOf(given: ClaimCase): Claim {
  const assembly = assembleClaim(given);
  if (assembly.kind === "blocked") throw new Error(assembly.reasons.map((reason) => reason.sentence).join(" "));
  return assembly.claim;
}

const paying = (pay: Partial<PaySchedule>) => samplePolicy({ ...makerPolicy, pay: { ...makerPolicy.pay, ...pay } });

test("trip: flat and as charged", () => {
  expect(claimOf(claimCase(pumpRecord(), paying({ trip: { kind: "flat", cents: 2500 } }))).totalCents).toBe(15_820);
  const trip = { cents: 4000, currency: "USD" } as const;
  const capped = paying({ trip: { kind: "cost", capCents: 3000 } });
  expect(claimOf(claimCase(pumpRecord({ job: { trip } }), capped)).totalCents).toBe(16_320);
});

// By hand, beside 133.20: 44 miles of which 20 are included, 24 at 67.5 cents = 16.20; capped at 12.00; within the radius nothing.
test.each([
  [44, undefined, 14_940],
  [44, 1200, 14_520],
  [20, undefined, 13_320],
  [0, undefined, 13_320],
])("trip by the mile: %i miles, at most %s", (tripMiles, capCents, cents) => {
  const trip = { kind: "per_mile", centsPerMile: 67.5, includedMiles: 20, capCents } as const;
  const claim = claimOf(claimCase(pumpRecord({ job: { tripMiles } }), paying({ trip })));
  expect(claim.totalCents).toBe(cents);
});

test("trip by the mile of a job without its miles is asked for, not guessed", () => {
  const trip = { kind: "per_mile", centsPerMile: 70, includedMiles: 0 } as const;
  const claim = claimOf(claimCase(pumpRecord(), paying({ trip })));
  expect(claim.isReady).toBe(false);
  expect(claim.tasks.at(-1)?.fixes.join(" ")).toContain("Enter the miles");
});
