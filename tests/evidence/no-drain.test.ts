// The no-drain decision table, row by row. The order of the checks is published by makers (drain-pump
// and level test orders, repair-centre guide); the table as a whole is common practice, no source. Each expectation below
// is the table's row written by hand, not read from lib/evidence.
import { describe, expect, test } from "vitest";
import { noDrainVerdict } from "@/lib/evidence/no-drain-verdict";
import { plainReading } from "./job-record";
import { free, line, none, ohms, path, reseated, seen, step, verdict, volts } from "./no-drain-readings";

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

test("an interlock that failed and was put right is passed: the last word counts", () => {
  const failed = seen(["interlocks", "fail"]);
  expect(verdict(...path, failed, ...step, none, ohms("pump_winding_at_board", 15), reseated).kind).toBe("board");
  expect(verdict(...path, ...step, failed, none, ohms("pump_winding_at_board", 15), reseated).kind).toBe(
    "interlocks_first",
  );
});
