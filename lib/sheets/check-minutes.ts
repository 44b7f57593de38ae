// How long a check takes with opening what must be opened. Common practice, no source; each company sets its own on its
// sheets, and only the ratios between them matter for the order that is proposed.
import type { Check } from "@/lib/evidence/check";

const named: Readonly<Record<string, number>> = {
  fault_code: 1,
  display: 1,
  impeller: 8,
  pump_housing: 6,
  trap: 4,
  pump_winding: 6,
  pump_winding_at_board: 8,
  load_at_board: 8,
  board_output: 8,
  board_condition: 6,
  connector_reseat: 6,
  harness_resistance: 10,
  downstream: 6,
  flow_test: 5,
  motor_brushes: 12,
  gearcase: 15,
  rear_seal: 12,
  splines: 12,
  element_scale: 10,
  limit_opens: 15,
  thermostat_opens: 15,
  thermostat_closes: 15,
  gas_coil_hot: 15,
  exhaust_temperature: 10,
  vent_pressure: 8,
  system_pressure: 25,
  leak_location: 30,
  refrigerant_recovered: 30,
  refrigerant_charged: 30,
  forced_defrost: 20,
  forced_harvest: 15,
  freezer_temperature: 10,
  frost_pattern: 15,
};

/** Minutes on the sheets as they come with the program. */
export function checkMinutes({ key, energy, modes, needs }: Check): number {
  const known = named[key];
  if (known !== undefined) return known;
  const isLook = modes[0] === "observation";
  if (energy === "live") return isLook ? 4 : 5;
  if (isLook) return energy === "off" ? 2 : 3;
  return needs.includes("temperature") ? 8 : 5;
}
