// Readings of the no-drain table in short, for the tests that lay them out row by row.
import type { Reading } from "@/lib/domain/reading";
import { noDrainVerdict } from "@/lib/evidence/no-drain-verdict";
import { plainReading } from "./job-record";

export type Finding = readonly [check: string, word: string];
export const clearPath: readonly Finding[] = [
  ["hose", "clear"],
  ["suds", "none"],
  ["trap", "clear"],
];
export const driven: readonly Finding[] = [
  ["drain_command", "commanded"],
  ["interlocks", "pass"],
];

export const seen = ([check, word]: Finding) =>
  plainReading({ check, mode: "observation", isolated: undefined, outcome: { kind: "finding", word } });
export const volts = (check: string, value: number, notes: Partial<Reading> = {}) =>
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
export const ohms = (check: string, value: number | "open" | "short", notes: Partial<Reading> = {}) =>
  plainReading({
    check,
    sheetLow: 10,
    sheetHigh: 20,
    outcome: typeof value === "number" ? { kind: "number", value, unit: "ohm" } : { kind: value },
    ...notes,
  });

export function verdict(...readings: readonly Reading[]) {
  return noDrainVerdict(readings.map((reading, index) => ({ ...reading, number: index + 1 })));
}

export const path = clearPath.map(seen);
export const step = driven.map(seen);
export const line = volts("pump_voltage", 119);
export const none = volts("pump_voltage", 0);
export const free = seen(["impeller", "free"]);
export const reseated = seen(["connector_reseat", "no_change"]);
