// The no-drain decision table, row by row, and ten whole cases. The order of the checks is published by makers (drain-pump
// and level test orders, repair-centre guide); the table as a whole is common practice, no source. Each expectation below
// is the table's row written by hand, not read from lib/evidence.
import { describe, expect, test } from "vitest";
import { causes } from "@/lib/domain/cause";
import type { Reading } from "@/lib/domain/reading";
import { checkEvidence } from "@/lib/evidence/check-evidence";
import { noDrainAgreement } from "@/lib/evidence/no-drain-agreement";
import { noDrainVerdict } from "@/lib/evidence/no-drain-verdict";
import { noDrainCases } from "@/synthetic-data/no-drain-cases";
import { jobRecord, plainReading } from "./job-record";

type Finding = readonly [check: string, word: string];
const clearPath: readonly Finding[] = [
  ["hose", "clear"],
  ["suds", "none"],
  ["trap", "clear"],
];
const driven: readonly Finding[] = [
  ["drain_command", "commanded"],
  ["interlocks", "pass"],
];

const seen = ([check, word]: Finding) =>
  plainReading({ check, mode: "observation", isolated: undefined, outcome: { kind: "finding", word } });
const volts = (check: string, value: number, notes: Partial<Reading> = {}) =>
  plainReading({
    check,
    mode: "volt_ac",
    power: "live",
    isolated: undefined,
    loadConnected: true,
    commanded: true,
    outcome: { kind: "number", value, unit: "V" },
    ...notes,
  });
/** Sheet range 10-20 ohm. */
const ohms = (check: string, value: number | "open" | "short", notes: Partial<Reading> = {}) =>
  plainReading({
    check,
    sheetLow: 10,
    sheetHigh: 20,
    outcome: typeof value === "number" ? { kind: "number", value, unit: "ohm" } : { kind: value },
    ...notes,
  });

function verdict(...readings: readonly Reading[]) {
  return noDrainVerdict(readings.map((reading, index) => ({ ...reading, number: index + 1 })));
}

const path = clearPath.map(seen);
const step = driven.map(seen);
const line = volts("pump_voltage", 119);
const none = volts("pump_voltage", 0);
const free = seen(["impeller", "free"]);
const reseated = seen(["connector_reseat", "no_change"]);

describe("each row of the table", () => {
  test.each([
    [seen(["trap", "object"]), "foreign_object"],
    [seen(["hose", "kinked"]), "installation"],
    [seen(["hose", "crushed"]), "installation"],
    [seen(["downstream", "blocked"]), "blockage_downstream"],
    [seen(["impeller", "object_damage"]), "foreign_object"],
    [
      plainReading({ check: "standpipe_height", mode: "inch", outcome: { kind: "number", value: 97, unit: "in" } }),
      "installation",
    ],
    [
      plainReading({ check: "standpipe_height", mode: "inch", outcome: { kind: "number", value: 29, unit: "in" } }),
      "installation",
    ],
    [
      plainReading({ check: "hose_insertion", mode: "inch", outcome: { kind: "number", value: 6, unit: "in" } }),
      "installation",
    ],
    [volts("supply_voltage", 96), "supply"],
  ] as const)("object, kink or supply: external, whatever the winding reads", (found, cause) => {
    const others = path.filter(({ check }) => check !== found.check);
    expect(verdict(...others, found, ...step, line, ohms("pump_winding", "open"))).toMatchObject({
      kind: "external",
      cause,
    });
  });

  test("suds: external, under its own name", () => {
    expect(verdict(seen(["hose", "clear"]), seen(["suds", "present"]))).toMatchObject({
      kind: "suds",
      cause: "suds_detergent",
      by: [2],
    });
  });

  test.each(["open", "short", 9, 21] as const)("line volts, winding %s: pump, electrical", (value) => {
    expect(verdict(...path, line, ohms("pump_winding", value))).toMatchObject({
      kind: "pump_electrical",
      cause: "component",
      component: "drain_pump",
    });
  });

  test("line volts, winding in range but shorted to ground: pump, electrical", () => {
    expect(
      verdict(
        ...path,
        line,
        ohms("pump_winding", 15),
        plainReading({ check: "winding_to_ground", outcome: { kind: "short" } }),
      ).kind,
    ).toBe("pump_electrical");
  });

  test.each(["seized", "loose", "cracked"])("line volts, winding in range, impeller %s: pump, mechanical", (word) => {
    expect(verdict(...path, line, ohms("pump_winding", 15), seen(["impeller", word])).kind).toBe("pump_mechanical");
  });

  test("line volts, winding in range, impeller free, flow normal: no fault found", () => {
    expect(verdict(...path, line, ohms("pump_winding", 15), free, seen(["flow_test", "normal"]))).toMatchObject({
      kind: "no_fault_found",
      cause: "no_fault_found",
    });
  });

  test("line volts, winding in range, impeller free, no flow: look again downstream", () => {
    expect(verdict(...path, line, ohms("pump_winding", 15), free, seen(["flow_test", "none"]))).toMatchObject({
      kind: "recheck_downstream",
      cause: undefined,
    });
  });

  test("no volts, winding in range at the board, interlocks pass, reseating no help: board", () => {
    expect(verdict(...path, ...step, none, ohms("pump_winding_at_board", 15), reseated)).toMatchObject({
      kind: "board",
      component: "control_board",
    });
  });

  test("no volts, in range at the pump, open at the board: harness", () => {
    expect(
      verdict(...path, ...step, none, ohms("pump_winding", 15), ohms("pump_winding_at_board", "open")),
    ).toMatchObject({ kind: "harness", component: "wire_harness" });
  });

  test.each(["open", "short"] as const)("no volts and the winding %s: pump first, then the board", (value) => {
    expect(verdict(...path, ...step, none, ohms("pump_winding", value))).toMatchObject({
      kind: "pump_first_then_board",
      cause: undefined,
    });
  });

  test.each([
    ["interlocks", "fail"],
    ["drain_command", "not_commanded"],
  ] as const)("%s %s: that first, no board is condemned", (check, word) => {
    const others = step.filter((reading) => reading.check !== check);
    expect(
      verdict(...path, ...others, seen([check, word]), none, ohms("pump_winding_at_board", 15), reseated).kind,
    ).toBe("interlocks_first");
  });
});

describe("a board is condemned only by exclusion: one thing less and it is not", () => {
  const whole = [...path, ...step, none, ohms("pump_winding_at_board", 15), reseated];
  test.each(["hose", "suds", "trap", "interlocks", "pump_winding_at_board", "connector_reseat", "pump_voltage"])(
    "without %s",
    (check) => {
      expect(verdict(...whole.filter((reading) => reading.check !== check)).kind).toBe("not_enough_readings");
    },
  );

  test.each([
    ["read without its load", { loadConnected: false }],
    ["read uncommanded", { commanded: false }],
    ["read with the power off", { power: "off" }],
  ] as const)("volts %s", (_name, notes) => {
    const readings = whole.map((reading) => (reading.check === "pump_voltage" ? { ...reading, ...notes } : reading));
    expect(verdict(...readings).kind).toBe("not_enough_readings");
  });

  test("reseating cured it", () => {
    expect(
      verdict(...path, ...step, none, ohms("pump_winding_at_board", 15), seen(["connector_reseat", "cured"])).kind,
    ).toBe("not_enough_readings");
  });

  test("a low voltage that is not none: 90 V of 110 decides no row", () => {
    expect(verdict(...path, ...step, volts("pump_voltage", 90), ohms("pump_winding_at_board", 15), reseated).kind).toBe(
      "not_enough_readings",
    );
  });
});

test.each([
  ["in circuit", { isolated: false }],
  ["with power on", { power: "live" }],
  ["without a sheet range", { sheetLow: undefined, sheetHigh: undefined }],
] as const)("a winding of 40 ohm read %s condemns no pump", (_name, notes) => {
  expect(verdict(...path, line, ohms("pump_winding", 40, notes)).kind).toBe("not_enough_readings");
  expect(verdict(...path, line, ohms("pump_winding", 40)).kind).toBe("pump_electrical");
});

test("the model's range decides where none is noted: 106 ohm is good on its own sheet and bad on a 10-20 ohm one", () => {
  const readings = [
    ...path,
    line,
    ohms("pump_winding", 106, { sheetLow: undefined, sheetHigh: undefined }),
    seen(["impeller", "seized"]),
  ].map((reading, index) => ({ ...reading, number: index + 1 }));
  const sheet = (low: number, high: number) =>
    [
      { check: "pump_winding", low, high, unit: "ohm", condition: undefined, source: "model sheet", mark: "published" },
    ] as const;
  expect(noDrainVerdict(readings, sheet(100, 112)).kind).toBe("pump_mechanical");
  expect(noDrainVerdict(readings, sheet(10, 20)).kind).toBe("pump_electrical");
});

test("a hose straightened and read again is clear, and the pump behind it can still be condemned", () => {
  expect(verdict(seen(["hose", "kinked"]), ...path, line, ohms("pump_winding", "open")).kind).toBe("pump_electrical");
});

test("no readings are not enough, and the first check is named", () => {
  expect(noDrainVerdict([])).toMatchObject({
    kind: "not_enough_readings",
    by: [],
    why: expect.stringContaining("Stored fault codes"),
  });
});

/** Written by hand from the list and the table: name, verdict, cause, failure of what, proven evidence. */
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

test("an interlock that failed and was put right is passed: the last word counts", () => {
  const failed = seen(["interlocks", "fail"]);
  expect(verdict(...path, failed, ...step, none, ohms("pump_winding_at_board", 15), reseated).kind).toBe("board");
  expect(verdict(...path, ...step, failed, none, ohms("pump_winding_at_board", 15), reseated).kind).toBe(
    "interlocks_first",
  );
});
