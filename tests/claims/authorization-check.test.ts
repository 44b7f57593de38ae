// Which repairs need the payer's number beforehand. The kinds (sealed system, parts over a price, a second control board,
// no proof of purchase, diagnosis only) are common practice, no source; the policy says which of them hold.
import { describe, expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { authorizationCheck } from "@/lib/claims/authorization-check";
import { claimAmounts } from "@/lib/claims/claim-amounts";
import type { JobRecord } from "@/lib/domain/job";
import { payItems } from "@/lib/domain/pay-item";
import type { AuthorizationRule } from "@/lib/domain/policy-pay";
import { makerPolicy, pumpRecord } from "./claim-case";

function check(record: JobRecord, rule: Partial<AuthorizationRule>) {
  const policy = {
    ...makerPolicy,
    authorization: { ...makerPolicy.authorization, ...rule },
    pay: { ...makerPolicy.pay, diagnosis: { kind: "flat" as const, cents: 4500 } },
  };
  return authorizationCheck(record, policy, claimAmounts(record, payItems, policy));
}

function following(component: string, fitted: readonly string[]): JobRecord {
  const completedOn = day("2024-11-01");
  return {
    ...pumpRecord(),
    earlier: [{ jobNumber: "J-0", completedOn, component, symptom: undefined, cause: "component", fitted }],
  };
}

describe("a second one of a component on the same unit", () => {
  test("needs a number, and names the job that fitted the first", () => {
    const found = check(following("drain_pump", ["drain_pump"]), { secondOf: ["drain_pump"] });
    expect(found.kind === "missing" ? found.fix : "").toContain("job J-0 fitted one of this component before");
  });
  test.each([
    ["the first one is another component", following("inlet_valve", ["inlet_valve"]), ["drain_pump"]],
    ["no part was fitted the first time", following("drain_pump", []), ["drain_pump"]],
    ["the policy does not name the component", following("drain_pump", ["drain_pump"]), ["control_board"]],
    ["there was no earlier job", pumpRecord(), ["drain_pump"]],
  ])("is not asked for where %s", (_name, record, secondOf) => {
    expect(check(record, { secondOf })).toEqual({ kind: "not_needed" });
  });
});

describe("a diagnosis without a repair", () => {
  test("needs a number where the policy says so", () => {
    const visit = pumpRecord({ job: { cause: "no_fault_found" } });
    expect(check(visit, { diagnosisOnly: true }).kind).toBe("missing");
    expect(check(visit, {}).kind).toBe("not_needed");
  });
  test("a repair is no diagnosis", () => {
    expect(check(pumpRecord(), { diagnosisOnly: true }).kind).toBe("not_needed");
  });
});
