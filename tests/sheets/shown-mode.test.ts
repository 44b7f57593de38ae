import { expect, test } from "vitest";
import type { Reading, ReadingOutcome } from "@/lib/domain/reading";
import { judgeReadings } from "@/lib/evidence/current-readings";
import { entries } from "@/lib/evidence/entries";
import { failureWords, shownMode } from "@/lib/sheets/shown-mode";

// Common practice, no source: OL across a winding is open, ohms under the sheet's are shorted turns, few ohms to the cabinet
// are a ground fault, whatever the winding itself reads.
const pump = { pump_winding: [12, 18] } as const;
const ohms = (value: number): ReadingOutcome => ({ kind: "number", value, unit: "ohm" });
test.each([
  ["FL-PUMP-OPEN", "pump_winding", { kind: "open" } as const, "winding_open", "winding open"],
  ["FL-PUMP-OPEN", "pump_winding", ohms(2), "winding_shorted", "winding shorted"],
  ["FL-PUMP-OPEN", "winding_to_ground", ohms(14_600), "grounded", "shorted to ground"],
  ["FL-PUMP-OPEN", "winding_to_ground", { kind: "short" } as const, "grounded", "shorted to ground"],
  [
    "FL-PUMP-MECH",
    "impeller",
    { kind: "finding", word: "cracked" } as const,
    "impeller_cracked",
    "impeller cracked or worn",
  ],
  ["FL-PUMP-MECH", "impeller", { kind: "finding", word: "loose" } as const, "impeller_loose", "impeller loose"],
])("%s with %s: %o is %s", (id, check, outcome, mode, words) => {
  const entry = entries.find((each) => each.id === id);
  if (entry === undefined) throw new Error(`no entry ${id}`);
  const readings = [
    reading(1, "pump_winding", ohms(15)),
    reading(2, "supply_voltage", { kind: "number", value: 120, unit: "V" }),
    reading(3, "pump_voltage", { kind: "number", value: 119, unit: "V" }),
    reading(4, check, outcome),
  ];
  const last = new Map(readings.map((each) => [each.check, each])); // the one looked at goes over the good one
  const judged = judgeReadings([...last.values()], [], "front_load_washer");
  expect(shownMode(entry, judged)).toBe(mode);
  expect(failureWords(entry, judged)).toBe(words);
});

function reading(number: number, check: string, outcome: ReadingOutcome): Reading {
  const isWord = outcome.kind === "finding";
  const isVolts = check.endsWith("voltage");
  const [sheetLow, sheetHigh] = check === "pump_winding" ? pump.pump_winding : [undefined, undefined];
  return {
    number,
    check,
    own: undefined,
    mode: isWord ? "observation" : isVolts ? "volt_ac" : "ohm",
    outcome,
    power: isVolts ? "live" : "off",
    pointA: undefined,
    pointB: undefined,
    isolated: true,
    loadConnected: true,
    commanded: true,
    temperatureC: undefined,
    sheetLow,
    sheetHigh,
    sheetReference: undefined,
    note: undefined,
    technician: undefined,
    takenAt: undefined,
  };
}
