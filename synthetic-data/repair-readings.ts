// What a technician measured and saw on some of the repairs of washers, dryers and refrigerators. Each component has a
// short list; the last step is the one that condemns the part. Where the readings contradict the repair, that step reads good.
import type { MeterMode, PowerState } from "@/lib/domain/reading";
import type { Model } from "./models";

export type RepairStep =
  | {
      readonly kind: "word";
      readonly check: string;
      readonly power: PowerState;
      readonly good: string;
      readonly bad: string;
    }
  | {
      readonly kind: "measure";
      readonly check: string;
      readonly mode: MeterMode;
      readonly power: PowerState;
      readonly unit: string;
      readonly low: number;
      readonly high: number;
      readonly bad: "open" | "short" | number;
      readonly atC?: number;
    }
  | {
      readonly kind: "volts";
      readonly check: string;
      readonly low: number;
      readonly high: number;
      readonly badVolts?: number;
    };

export interface RepairReadings {
  /** Steps that rule other causes out: always read good. */
  readonly before: readonly RepairStep[];
  readonly decisive: RepairStep;
  /** Failure modes for which the decisive step is the proof; any mode where absent. */
  readonly modes?: readonly string[];
}

const off = "off";
const closedPanels = "powered_panels_closed";
const ohm = (
  check: string,
  low: number,
  high: number,
  bad: "open" | "short" | number = "open",
  atC?: number,
): RepairStep => ({
  kind: "measure",
  check,
  mode: "ohm",
  power: off,
  unit: "ohm",
  low,
  high,
  bad,
  ...(atC === undefined ? {} : { atC }),
});
const word = (check: string, good: string, bad: string, power: PowerState = off): RepairStep => ({
  kind: "word",
  check,
  power,
  good,
  bad,
});
const volts = (check: string, badVolts?: number): RepairStep => ({
  kind: "volts",
  check,
  low: 110,
  high: 126,
  ...(badVolts === undefined ? {} : { badVolts }),
});

const drainPath: readonly RepairStep[] = [
  word("hose", "clear", "kinked"),
  word("suds", "none", "present"),
  word("trap", "clear", "object"),
];

/** Ranges given here are those of the model sheets that ranges.csv repeats, except the drain pump's, which differs by model. */
export const repairReadings: Readonly<
  Partial<Record<Model["productType"], Readonly<Record<string, readonly RepairReadings[]>>>>
> = {
  front_load_washer: {
    drain_pump: [
      { before: [...drainPath, volts("pump_voltage")], decisive: ohm("pump_winding", 0, 0), modes: ["winding_open"] },
      {
        before: [...drainPath, volts("pump_voltage"), ohm("pump_winding", 0, 0)],
        decisive: word("impeller", "free", "seized"),
        modes: ["impeller_seized"],
      },
      {
        before: [...drainPath, volts("pump_voltage"), ohm("pump_winding", 0, 0)],
        decisive: word("impeller", "free", "loose"),
        modes: ["impeller_loose"],
      },
      {
        before: [...drainPath, volts("pump_voltage"), ohm("pump_winding", 0, 0)],
        decisive: word("impeller", "free", "cracked"),
        modes: ["impeller_cracked"],
      },
    ],
    control_board: [
      {
        before: [
          volts("supply_voltage"),
          word("connector_reseat", "no_change", "cured"),
          word("board_condition", "clean", "surge"),
          word("interlocks", "pass", "fail", closedPanels),
        ],
        decisive: volts("board_output", 0),
      },
    ],
    door_lock: [
      {
        before: [word("door_hook", "intact", "broken"), volts("lock_voltage")],
        decisive: ohm("lock_coil", 50, 1500),
        modes: ["coil_open"],
      },
      { before: [word("door_hook", "intact", "broken")], decisive: ohm("lock_switch", 0, 1), modes: ["contact_open"] },
    ],
    inlet_valve: [
      {
        before: [
          word("inlet_taps", "open", "closed"),
          word("inlet_screens", "clean", "clogged"),
          volts("inlet_voltage"),
        ],
        decisive: ohm("inlet_coil", 750, 900),
        modes: ["coil_open"],
      },
    ],
    tub_bearing: [{ before: [word("rear_seal", "wet", "dry")], decisive: word("drum_play", "none", "play") }],
  },
  top_load_washer: {
    drain_pump: [
      { before: [...drainPath, volts("pump_voltage")], decisive: ohm("pump_winding", 0, 0), modes: ["winding_open"] },
    ],
    lid_lock: [
      { before: [word("lid_strike", "intact", "broken")], decisive: ohm("lid_switch", 0, 1), modes: ["contact_open"] },
    ],
    suspension_rods: [
      { before: [word("floor_level", "level", "off_level")], decisive: word("bounce", "settles", "keeps_bouncing") },
    ],
    shift_actuator: [
      {
        before: [word("splines", "good", "worn")],
        decisive: word("shift_position", "changes", "no_change", closedPanels),
      },
    ],
  },
  electric_dryer: {
    heating_element: [
      {
        before: [word("vent_condition", "clear", "lint"), ohm("thermal_cutoff", 0, 1)],
        decisive: ohm("dryer_element", 8, 12),
        modes: ["element_open"],
      },
    ],
    thermal_cutoff_or_fuse: [
      {
        before: [word("vent_condition", "clear", "lint"), ohm("dryer_element", 8, 12)],
        decisive: ohm("thermal_cutoff", 0, 1),
      },
    ],
    belt_idler_rollers: [{ before: [], decisive: word("belt_condition", "whole", "belt_broken") }],
    door_switch: [
      {
        before: [word("door_strike", "intact", "broken")],
        decisive: ohm("door_switch", 0, 1),
        modes: ["contact_open"],
      },
    ],
    thermistor: [{ before: [], decisive: ohm("dryer_thermistor", 9500, 10500, 16200, 25), modes: ["out_of_curve"] }],
  },
  gas_dryer: {
    igniter: [
      {
        before: [word("gas_shutoff", "open", "closed"), volts("igniter_voltage")],
        decisive: ohm("igniter_cold", 50, 500),
      },
    ],
    gas_valve_coils: [
      {
        before: [word("gas_shutoff", "open", "closed"), word("igniter_glow", "glows", "no_glow", closedPanels)],
        decisive: ohm("gas_coil_hot", 1200, 1400),
      },
    ],
    belt_idler_rollers: [{ before: [], decisive: word("belt_condition", "whole", "rollers_worn") }],
    thermal_fuse: [{ before: [word("vent_condition", "clear", "lint")], decisive: ohm("thermal_fuse", 0, 1) }],
  },
  refrigerator: {
    evaporator_fan_motor: [
      {
        before: [word("fan_ice", "none", "ice"), { kind: "volts", check: "fan_voltage", low: 11.5, high: 13.5 }],
        decisive: word("evaporator_fan_runs", "runs", "dead", closedPanels),
      },
    ],
    defrost_heater: [{ before: [word("door_seal", "closes", "ajar")], decisive: ohm("defrost_heater", 20, 23) }],
    defrost_thermostat_or_fuse: [
      { before: [ohm("defrost_heater", 20, 23)], decisive: ohm("defrost_thermostat_cold", 0, 1, "open", -12) },
    ],
    start_device_and_overload: [
      {
        before: [word("condenser", "clean", "dirty"), ohm("compressor_winding", 3, 9)],
        decisive: ohm("start_device", 3, 12),
        modes: ["open"],
      },
    ],
    condenser_fan_motor: [
      {
        before: [word("condenser", "clean", "dirty")],
        decisive: word("condenser_fan_runs", "runs", "dead", closedPanels),
      },
    ],
    thermistor: [
      {
        before: [word("sensor_position", "fresh_food", "wrong_family")],
        decisive: ohm("fridge_ntc", 28500, 31500, 41800, 0),
        modes: ["out_of_curve"],
      },
    ],
    air_damper: [
      { before: [word("damper_ice", "none", "ice")], decisive: word("damper_moves", "moves", "stuck", closedPanels) },
    ],
  },
};
