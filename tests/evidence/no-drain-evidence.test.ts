// What proves and what contradicts a part behind a washer that will not drain.
import { expect, test } from "vitest";
import { checkEvidence } from "@/lib/evidence/check-evidence";
import { noDrainAgreement } from "@/lib/evidence/no-drain-agreement";
import { noDrainVerdict } from "@/lib/evidence/no-drain-verdict";
import { noDrainCases } from "@/synthetic-data/no-drain-cases";
import { jobRecord } from "./job-record";
import { ohms, seen } from "./no-drain-readings";

test("a pump claimed on the board's readings is contradicted by the voltage, and the agreement names the board", () => {
  const board = noDrainCases.find(({ name }) => name.startsWith("No output"));
  const readings = board?.readings ?? [];
  const record = jobRecord({
    job: { component: "drain_pump", failureMode: "winding_open" },
    readings,
    photos: board?.photos ?? [],
    fitted: "drain_pump",
  });
  const check = checkEvidence(record, []);
  expect(check.kind).toBe("contradicted");
  const voltage = readings.find((reading) => reading.check === "pump_voltage")?.number;
  expect(check.contradictions).toContainEqual({ by: voltage, why: "no voltage at the connector in the drain test" });
  expect(noDrainAgreement({ cause: "component", component: "drain_pump" }, noDrainVerdict(readings))).toMatchObject({
    kind: "disagrees",
    why: expect.stringContaining("control_board"),
  });
});

test("with the failure mode not recorded the readings choose between the pump's two entries", () => {
  for (const [name, id] of [
    ["Open winding", "FL-PUMP-OPEN"],
    ["Broken impeller", "FL-PUMP-MECH"],
  ] as const) {
    const example = noDrainCases.find((candidate) => candidate.name === name);
    const record = jobRecord({
      job: { component: "drain_pump" },
      readings: example?.readings ?? [],
      photos: example?.photos ?? [],
      fitted: "drain_pump",
    });
    expect(checkEvidence(record, [])).toMatchObject({ kind: "proven", entryId: id });
  }
});

test("a photo of an object speaks against a pump until the trap is read clear", () => {
  const open = noDrainCases.find(({ name }) => name === "Open winding");
  const photos = [...(open?.photos ?? []), "foreign_object"] as const;
  const job = { component: "drain_pump", failureMode: "winding_open" };
  const unread = (open?.readings ?? []).filter(({ check }) => check !== "trap");
  expect(checkEvidence(jobRecord({ job, readings: unread, photos, fitted: "drain_pump" }), [])).toMatchObject({
    kind: "outside_cause",
    outside: [{ cause: "foreign_object" }],
  });
  expect(checkEvidence(jobRecord({ job, readings: open?.readings ?? [], photos, fitted: "drain_pump" }), []).kind).toBe(
    "proven",
  );
});

test("a winding without its sheet range is missing, not proven, and the fix says to note the range", () => {
  const example = noDrainCases.find(({ name }) => name === "Broken impeller");
  const readings = (example?.readings ?? []).map((reading) => ({
    ...reading,
    sheetLow: undefined,
    sheetHigh: undefined,
  }));
  const check = checkEvidence(
    jobRecord({
      job: { component: "drain_pump", failureMode: "impeller_cracked" },
      readings,
      photos: example?.photos ?? [],
      fitted: "drain_pump",
    }),
    [],
  );
  expect(check.kind).toBe("missing");
  expect(check.items.find(({ key }) => key === "check:pump_winding")).toMatchObject({
    state: "missing",
    canStillBeHad: true,
    whatWouldFixIt: expect.stringContaining("model sheet"),
  });
});

test("an unknown component, or none, has no entry and says what to do", () => {
  expect(checkEvidence(jobRecord({ job: { component: undefined } }), [])).toMatchObject({
    kind: "no_entry",
    entryId: undefined,
    verdict: expect.stringContaining("Name the component"),
  });
  expect(checkEvidence(jobRecord({ job: { component: "cabinet" } }), [])).toMatchObject({
    kind: "no_entry",
    verdict: expect.stringContaining("Cabinet"),
  });
  expect(checkEvidence(jobRecord({ job: { component: "cabinet", cause: "transit" } }), [])).toMatchObject({
    kind: "outside_cause",
  });
});

test("what is proven weighs more than how much is in place: a seized impeller among electrical readings is a mechanical failure", () => {
  const electrical = noDrainCases.find(({ name }) => name === "Open winding");
  const readings = (electrical?.readings ?? []).map((reading) => {
    if (reading.check === "impeller") return { ...seen(["impeller", "seized"]), number: reading.number };
    return reading.check === "pump_winding" ? { ...ohms("pump_winding", 15), number: reading.number } : reading;
  });
  const record = jobRecord({
    job: { component: "drain_pump" },
    readings,
    photos: ["plate", "fault_code", "receipt", "part_labels"],
    fitted: "drain_pump",
  });
  expect(checkEvidence(record, [])).toMatchObject({ kind: "missing", entryId: "FL-PUMP-MECH" });
});
