// Ten whole cases of a front-load washer that will not drain, each against the table’s row written by hand.
import { describe, expect, test } from "vitest";
import { causes } from "@/lib/domain/cause";
import { checkEvidence } from "@/lib/evidence/check-evidence";
import { noDrainAgreement } from "@/lib/evidence/no-drain-agreement";
import { noDrainVerdict } from "@/lib/evidence/no-drain-verdict";
import { noDrainCases } from "@/synthetic-data/no-drain-cases";
import { jobRecord } from "./job-record";

/** Written by hand from the list of cases and the table: name, verdict, cause, failure of what, proven evidence. */
const expected = [
  ["Kinked hose", "external", "installation", "outside_cause"],
  ["Suds", "suds", "suds_detergent", "outside_cause"],
  ["Object in the trap", "external", "foreign_object", "outside_cause"],
  ["Broken impeller", "pump_mechanical", "component", "proven"],
  ["Open winding", "pump_electrical", "component", "proven"],
  ["Winding in range but seized", "pump_mechanical", "component", "proven"],
  ["Hose blocked past the pump", "external", "blockage_downstream", "outside_cause"],
  ["No output from the board, load good", "board", "component", "proven"],
  ["Harness open between board and pump", "harness", "component", "proven"],
  ["Nothing found", "no_fault_found", "no_fault_found", "no_entry"],
] as const;

test("the ten cases are the ten of the list, in its order", () => {
  expect(noDrainCases.map(({ name, expectedVerdict, cause }) => [name, expectedVerdict, cause])).toEqual(
    expected.map(([name, kind, cause]) => [name, kind, cause]),
  );
});

describe.each(noDrainCases)("$name", (example) => {
  const [, kind, cause, evidence] = expected.find(([name]) => name === example.name) ?? [];
  const read = noDrainVerdict(example.readings);
  const { component, failureMode, complaint, causeNote, correction } = example;
  const record = jobRecord({
    job: { component, failureMode, cause: example.cause, complaint, causeNote, correction },
    readings: example.readings,
    photos: example.photos,
    fitted: example.fitted,
  });

  test("the readings give its verdict and its cause", () => {
    expect(read).toMatchObject({ kind, cause });
    expect(read.by.length).toBeGreaterThan(0);
    expect(noDrainAgreement({ cause: example.cause, component: example.component }, read)).toEqual({ kind: "agrees" });
  });

  test("it is counted and claimable as its cause says", () => {
    const isFailure = cause === "component";
    expect([example.expectedCountedAs, example.expectedClaimable]).toEqual([isFailure ? "failure" : "call", isFailure]);
    expect(causes[example.cause].kind === "component").toBe(isFailure);
  });

  test("the evidence says so, with a verdict in words", () => {
    const check = checkEvidence(record, []);
    expect(check.kind, check.verdict).toBe(evidence);
    expect(check.verdict).not.toBe("");
  });

  test("closed with another cause, it is found out", () => {
    const wrong = example.cause === "component" ? "foreign_object" : "component";
    expect(noDrainAgreement({ cause: wrong, component: "drain_pump" }, read).kind).toBe("disagrees");
  });
});
