import type { Check } from "@/lib/evidence/check";

/** Where the two leads go, as a drawing shows it and as a reading names it. */
export interface TestPoints {
  readonly drawing: Drawing;
  /** Names of the two points, one pair per reading; empty where nothing is measured between two points. */
  readonly pairs: readonly (readonly [string, string])[];
}

export const drawings = [
  "two terminals",
  "three terminals",
  "terminal to ground",
  "board connector",
  "live connector",
  "outlet",
  "capacitor",
  "clamp",
  "probe",
  "manometer",
  "gauge tap",
  "tape",
  "display",
  "eye",
] as const;
export type Drawing = (typeof drawings)[number];

const pair = (a: string, b: string): TestPoints["pairs"] => [[a, b]];
const threePairs: TestPoints["pairs"] = [
  ["terminal 1", "terminal 2"],
  ["terminal 2", "terminal 3"],
  ["terminal 1", "terminal 3"],
];

/** The catalogue says in words where the leads go; this is the picture that goes with it. */
export function testPoints({ key, modes, energy, points }: Check): TestPoints {
  const [mode] = modes;
  const own = Object.hasOwn(named, key) ? named[key] : undefined;
  if (own !== undefined) return own;
  switch (mode) {
    case "ohm":
    case "continuity":
      if (/ground|shell|metal/.test(points))
        return { drawing: "terminal to ground", pairs: pair("terminal", "bare metal") };
      if (/board connector/.test(points))
        return { drawing: "board connector", pairs: pair("board pin 1", "board pin 2") };
      if (/three pairs/.test(points)) return { drawing: "three terminals", pairs: threePairs };
      return { drawing: "two terminals", pairs: pair("terminal 1", "terminal 2") };
    case "volt_ac":
    case "volt_dc":
      return { drawing: "live connector", pairs: pair("connector 1", "connector 2") };
    case "microfarad":
      return { drawing: "capacitor", pairs: pair("terminal 1", "terminal 2") };
    case "ampere":
      return { drawing: "clamp", pairs: [] };
    case "inch_water":
      return { drawing: "manometer", pairs: [] };
    case "psi":
      return { drawing: "gauge tap", pairs: [] };
    case "inch":
      return { drawing: "tape", pairs: [] };
    case "degree_f":
    case "degree_c":
      return { drawing: "probe", pairs: [] };
    case "fault_code":
      return { drawing: "display", pairs: [] };
    case "observation":
      return {
        drawing: energy === "powered_panels_closed" && /display|service mode/.test(points) ? "display" : "eye",
        pairs: [],
      };
  }
}

const named: Readonly<Record<string, TestPoints>> = {
  supply_voltage: { drawing: "outlet", pairs: pair("line", "neutral or other line") },
  board_output: { drawing: "live connector", pairs: pair("board pin 1", "board pin 2") },
  pump_winding: { drawing: "two terminals", pairs: pair("pump 1", "pump 2") },
  winding_to_ground: { drawing: "terminal to ground", pairs: pair("terminal", "cabinet") },
  harness_resistance: { drawing: "board connector", pairs: pair("board end", "load end") },
};
