// The readings of a no-drain call as a technician enters them; numbers are given when a case gathers them.
import type { Reading, ReadingOutcome } from "@/lib/domain/reading";

const blank: Reading = {
  number: 0,
  check: "",
  pointA: undefined,
  pointB: undefined,
  mode: "observation",
  outcome: { kind: "no_reading" },
  power: "off",
  isolated: undefined,
  loadConnected: undefined,
  commanded: undefined,
  temperatureC: undefined,
  sheetLow: undefined,
  sheetHigh: undefined,
  sheetReference: undefined,
  note: undefined,
  technician: undefined,
  takenAt: undefined,
};

export function worked(readings: readonly Reading[]): readonly Reading[] {
  return readings.map((reading, index) => ({ ...reading, number: index + 1 }));
}

export function seen(check: string, word: string, power: Reading["power"] = "off"): Reading {
  return { ...blank, check, power, outcome: { kind: "finding", word } };
}

export function code(): Reading {
  return {
    ...blank,
    check: "fault_code",
    mode: "fault_code",
    power: "powered_panels_closed",
    outcome: { kind: "code", code: "F21" },
  };
}

export function clearHose(): readonly Reading[] {
  return [seen("hose", "clear"), inches("standpipe_height", 36), inches("hose_insertion", 4)];
}

export function clearPath(): readonly Reading[] {
  return [...clearHose(), seen("suds", "none"), seen("trap", "clear")];
}

function inches(check: string, value: number): Reading {
  return { ...blank, check, mode: "inch", outcome: { kind: "number", value, unit: "in" } };
}

function supply(): Reading {
  return { ...volts("supply_voltage", 120), pointA: "line", pointB: "neutral", commanded: undefined };
}

function commandedDrain(): readonly Reading[] {
  return [
    supply(),
    seen("drain_command", "commanded", "powered_panels_closed"),
    seen("interlocks", "pass", "powered_panels_closed"),
  ];
}

export function lineAtPump(): readonly Reading[] {
  return [...commandedDrain(), volts("pump_voltage", 119)];
}

export function silentPump(): readonly Reading[] {
  return [...commandedDrain(), volts("pump_voltage", 0)];
}

export function volts(check: string, value: number): Reading {
  const outcome: ReadingOutcome = { kind: "number", value, unit: "V" };
  return {
    ...blank,
    check,
    mode: "volt_ac",
    power: "live",
    outcome,
    pointA: "connector 1",
    pointB: "connector 2",
    loadConnected: true,
    commanded: true,
  };
}

/** Isolated, power off, with the sheet's range. */
export function winding(value: number): Reading {
  return { ...openWinding(), outcome: { kind: "number", value, unit: "ohm" } };
}

export function windingAtBoard(value: number): Reading {
  return {
    ...winding(value),
    check: "pump_winding_at_board",
    pointA: "board connector P",
    pointB: "board connector N",
  };
}

export function openWinding(): Reading {
  return {
    ...blank,
    check: "pump_winding",
    mode: "ohm",
    outcome: { kind: "open" },
    isolated: true,
    pointA: "pump 1",
    pointB: "pump 2",
    sheetLow: 12,
    sheetHigh: 18,
    sheetReference: "model sheet, page 4 (invented for the demo)",
  };
}

export function toGround(): Reading {
  return {
    ...blank,
    check: "winding_to_ground",
    mode: "ohm",
    outcome: { kind: "open" },
    isolated: true,
    pointA: "pump 1",
    pointB: "cabinet",
  };
}
