// What the customer notices, in the customer's words; never what the technician finds. Keys are stable: intake files
// and evidence entries refer to them. The list is common practice, no source.
import type { ProductType } from "./product-type";

const washers = ["front_load_washer", "top_load_washer"] as const;
const dryers = ["electric_dryer", "gas_dryer"] as const;
const wet = [...washers, "dishwasher"] as const;
const household = [...wet, ...dryers, "refrigerator", "range_oven"] as const;

export const symptoms: readonly Symptom[] = [
  { key: "will_not_drain", name: "Will not drain", productTypes: wet },
  { key: "drains_slowly", name: "Drains slowly", productTypes: wet },
  { key: "drain_pump_never_stops", name: "Drain pump never stops", productTypes: wet },
  { key: "will_not_fill", name: "Will not fill", productTypes: wet },
  { key: "fills_slowly", name: "Fills slowly", productTypes: wet },
  { key: "overfills", name: "Overfills", productTypes: wet },
  { key: "fills_when_off", name: "Fills when off", productTypes: wet },
  { key: "leaks", name: "Leaks water", productTypes: [...wet, "refrigerator"] },
  { key: "leaks_oil", name: "Oil under the machine", productTypes: washers },
  { key: "too_many_suds", name: "Too many suds", productTypes: wet },
  { key: "wrong_water_temperature", name: "Wrong water temperature", productTypes: wet },
  {
    key: "will_not_heat",
    name: "Will not heat",
    productTypes: ["front_load_washer", ...dryers, "dishwasher", "range_oven"],
  },
  { key: "overheats", name: "Overheats", productTypes: [...dryers, "range_oven"] },
  { key: "wrong_temperature", name: "Wrong temperature", productTypes: ["refrigerator", "range_oven", "dishwasher"] },
  { key: "will_not_tumble", name: "Drum will not turn", productTypes: ["front_load_washer", ...dryers] },
  { key: "will_not_spin", name: "Will not spin", productTypes: washers },
  { key: "will_not_agitate", name: "Will not agitate", productTypes: ["top_load_washer"] },
  { key: "shakes", name: "Shakes or walks", productTypes: washers },
  { key: "noisy", name: "Noisy", productTypes: household },
  { key: "hums", name: "Hums and does nothing", productTypes: household },
  { key: "no_power", name: "No power", productTypes: household },
  { key: "will_not_start", name: "Will not start", productTypes: household },
  { key: "stops_mid_cycle", name: "Stops before the end", productTypes: [...wet, ...dryers] },
  { key: "never_ends", name: "Runs too long or never ends", productTypes: [...wet, ...dryers] },
  { key: "trips_breaker", name: "Trips the breaker", productTypes: household },
  { key: "fault_code", name: "Shows a fault code", productTypes: household },
  { key: "door_stays_locked", name: "Door stays locked", productTypes: [...washers, "range_oven"] },
  { key: "smells", name: "Smell or mould", productTypes: household },
  { key: "smells_of_gas", name: "Smell of gas", productTypes: ["gas_dryer", "range_oven"] },
  { key: "dries_badly", name: "Clothes stay damp", productTypes: dryers },
  { key: "washes_badly", name: "Washes badly", productTypes: wet },
  { key: "soap_not_released", name: "Soap not released", productTypes: ["dishwasher"] },
  { key: "not_cold", name: "Not cold", productTypes: ["refrigerator"] },
  { key: "too_cold", name: "Too cold or freezing food", productTypes: ["refrigerator"] },
  { key: "freezer_cold_fridge_warm", name: "Freezer cold, fresh food warm", productTypes: ["refrigerator"] },
  { key: "frost_build_up", name: "Frost or ice inside", productTypes: ["refrigerator"] },
  { key: "clicks", name: "Clicks again and again", productTypes: ["refrigerator", "range_oven", "top_load_washer"] },
  { key: "no_ice", name: "No ice or hollow ice", productTypes: ["refrigerator"] },
  { key: "no_water", name: "No water at the dispenser", productTypes: ["refrigerator"] },
  { key: "will_not_light", name: "Will not light", productTypes: ["range_oven"] },
  { key: "burner_will_not_heat", name: "Burner will not heat", productTypes: ["range_oven"] },
  { key: "burner_stuck_high", name: "Burner stuck on high", productTypes: ["range_oven"] },
  { key: "damaged", name: "Damaged or broken", productTypes: household },
  { key: "stopped_working", name: "Stopped working", productTypes: ["other_equipment"] },
];

export interface Symptom {
  readonly key: string;
  readonly name: string;
  readonly productTypes: readonly ProductType[];
}

const byKey: ReadonlyMap<string, Symptom> = new Map(symptoms.map((symptom) => [symptom.key, symptom]));

/** The symptom of that key, or undefined where the catalogue has none. */
export function symptomOf(key: string): Symptom | undefined {
  return byKey.get(key);
}
