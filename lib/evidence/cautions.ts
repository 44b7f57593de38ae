// Safety cautions that stand beside the check that needs them and cannot be put away. They are the usual ones; the
// model sheet, local codes and licensed practice decide.
import type { SourceMark } from "@/lib/domain/reading";

export const cautions = {
  de_energize: {
    text: "De-energize before work on live parts, unless that is infeasible or more hazardous.",
    basis: "29 CFR 1910.333(a)(1)",
    mark: "law",
  },
  control_plug: {
    text: "Unplug and keep the plug under your own control, or lock and tag the breaker.",
    basis: "29 CFR 1910.147(a)(2)(iii)(A); 1910.333(b)(2)",
    mark: "law",
  },
  prove_dead: { text: "Prove dead with a tested meter.", basis: "29 CFR 1910.333(b)(2)(iv)", mark: "law" },
  live_work: {
    text: "Live test: qualified persons only, insulated tools, one hand, no jewellery.",
    basis: "29 CFR 1910.333(c), 1910.334(c), 1910.335",
    mark: "law",
  },
  discharge_capacitors: {
    text: "Discharge capacitors (run capacitor, inverter bus) through a resistor, 10 kΩ, before touching.",
    basis: "29 CFR 1910.333(b)(2)(ii); resistor value from maker sheets",
    mark: "law",
  },
  microwave: {
    text: "Microwave and over-the-range: the high-voltage capacitor can kill after unplugging; never run with the door open; check interlocks and leakage after service (limit 5 mW/cm² in use).",
    basis: "maker precautions; 21 CFR 1030.10, from memory",
    mark: "from memory",
  },
  reconnect_grounds: { text: "Reconnect every ground before power returns.", basis: "maker sheets", mark: "published" },
  static_discharge: {
    text: "Control board: guard against static discharge.",
    basis: "maker sheets",
    mark: "published",
  },
  gas: {
    text: "Gas: shut off first; leak test every disturbed joint with solution, never a flame; check pressure; watch for carbon monoxide. Licensed practice and the local fuel-gas code decide.",
    basis: "maker sheets; local fuel-gas code",
    mark: "published",
  },
  water_and_scald: {
    text: "Water with electricity: drain the tub before low access. Water may scald.",
    basis: "maker sheets",
    mark: "published",
  },
  refrigerant: {
    text: "Opening the refrigerant circuit: section 608 Type I or Universal certification; no venting; recover 90 % with the compressor running, 80 % where it does not run (small appliances, 5 lb or less).",
    basis: "40 CFR 82.152-.161",
    mark: "law",
  },
  flammable_refrigerant: {
    text: "R-600a and R-290 burn: control ignition, use a leak detector, no open flame; local rules decide.",
    basis: "40 CFR 82.154(a), from memory",
    mark: "from memory",
  },
  range_tip_over: {
    text: "Range: check the anti-tip bracket after every move.",
    basis: "government accident record 1980-2008; door-load rule since 1991",
    mark: "government",
  },
  tip_and_lift: {
    text: "Refrigerators and stacked laundry tip: secure them, and lift with two.",
    basis: "common practice, no source",
    mark: "common practice, no source",
  },
  sharp_edges: { text: "Sharp edges: wear cut gloves.", basis: "29 CFR 1910.138", mark: "law" },
  dryer_open: {
    text: "Dryer: never leave it running with panels or vent off; lint burns.",
    basis: "maker sheets",
    mark: "published",
  },
  no_bypass: {
    text: "Do not bypass a thermal fuse or an interlock, except for a momentary test that the sheet lists.",
    basis: "maker sheets; common practice",
    mark: "published",
  },
  sheet_decides: {
    text: "The model sheet, local codes and licensed practice decide.",
    basis: "every test value and procedure shown here",
    mark: "common practice, no source",
  },
} as const satisfies Record<string, Caution>;

export interface Caution {
  readonly text: string;
  readonly basis: string;
  readonly mark: SourceMark;
}

export type CautionKey = keyof typeof cautions;
