// Calls that are no failure of a component: how often, and what they look like. Constant over age except in the first
// 90 days, when installation, use and nothing-found calls are commoner (common practice, no source; numbers invented).
import type { Cause } from "@/lib/domain/cause";
import type { Model } from "./models";

export interface CallRate {
  readonly cause: Cause;
  readonly component?: string;
  readonly symptom: string;
  /** Calls per 100 unit-years after the first 90 days. */
  readonly per100UnitYears: number;
  /** How many times commoner in the first 90 days. */
  readonly early: number;
}

export const earlyDays = 90;

export const callRates: Readonly<Record<Model["productType"], readonly CallRate[]>> = {
  front_load_washer: [
    { cause: "foreign_object", component: "drain_path", symptom: "will_not_drain", per100UnitYears: 2.03, early: 1 },
    { cause: "suds_detergent", component: "drain_path", symptom: "too_many_suds", per100UnitYears: 0.81, early: 2 },
    { cause: "installation", component: "drain_hose", symptom: "will_not_drain", per100UnitYears: 0.2, early: 14 },
    { cause: "installation", symptom: "shakes", per100UnitYears: 0.27, early: 25 },
    {
      cause: "blockage_downstream",
      component: "drain_path",
      symptom: "will_not_drain",
      per100UnitYears: 0.41,
      early: 1,
    },
    { cause: "maintenance", component: "door_boot", symptom: "smells", per100UnitYears: 0.68, early: 1 },
    { cause: "education", symptom: "never_ends", per100UnitYears: 0.68, early: 12 },
    { cause: "no_fault_found", symptom: "noisy", per100UnitYears: 1.35, early: 5 },
  ],
  top_load_washer: [
    { cause: "foreign_object", component: "drain_pump", symptom: "will_not_drain", per100UnitYears: 1.49, early: 1 },
    { cause: "suds_detergent", symptom: "too_many_suds", per100UnitYears: 0.41, early: 2 },
    { cause: "installation", symptom: "shakes", per100UnitYears: 0.41, early: 20 },
    { cause: "misuse_accident", component: "tub", symptom: "shakes", per100UnitYears: 0.68, early: 1 },
    { cause: "supply", component: "inlet_hose", symptom: "fills_slowly", per100UnitYears: 0.68, early: 2 },
    { cause: "education", symptom: "washes_badly", per100UnitYears: 0.68, early: 12 },
    { cause: "no_fault_found", symptom: "noisy", per100UnitYears: 1.22, early: 5 },
  ],
  electric_dryer: [
    { cause: "maintenance", component: "vent_path", symptom: "dries_badly", per100UnitYears: 2.16, early: 0.3 },
    { cause: "installation", component: "vent_path", symptom: "dries_badly", per100UnitYears: 0.27, early: 20 },
    { cause: "supply", symptom: "will_not_heat", per100UnitYears: 0.81, early: 3 },
    { cause: "foreign_object", component: "blower", symptom: "noisy", per100UnitYears: 0.68, early: 1 },
    { cause: "education", symptom: "dries_badly", per100UnitYears: 0.41, early: 12 },
    { cause: "no_fault_found", symptom: "stops_mid_cycle", per100UnitYears: 0.94, early: 5 },
  ],
  gas_dryer: [
    { cause: "maintenance", component: "vent_path", symptom: "dries_badly", per100UnitYears: 2.16, early: 0.3 },
    { cause: "installation", component: "vent_path", symptom: "dries_badly", per100UnitYears: 0.27, early: 20 },
    { cause: "supply", symptom: "will_not_heat", per100UnitYears: 0.68, early: 3 },
    { cause: "education", symptom: "dries_badly", per100UnitYears: 0.41, early: 12 },
    { cause: "no_fault_found", symptom: "stops_mid_cycle", per100UnitYears: 0.94, early: 5 },
  ],
  dishwasher: [
    { cause: "foreign_object", component: "drain_pump", symptom: "will_not_drain", per100UnitYears: 1.08, early: 1.5 },
    { cause: "installation", component: "drain_hose", symptom: "will_not_drain", per100UnitYears: 0.27, early: 25 },
    { cause: "maintenance", component: "drain_filter", symptom: "washes_badly", per100UnitYears: 1.35, early: 0.5 },
    { cause: "suds_detergent", symptom: "leaks", per100UnitYears: 0.54, early: 3 },
    { cause: "education", symptom: "washes_badly", per100UnitYears: 0.94, early: 12 },
    { cause: "no_fault_found", symptom: "washes_badly", per100UnitYears: 1.08, early: 5 },
  ],
  refrigerator: [
    { cause: "maintenance", component: "condenser_fan_motor", symptom: "not_cold", per100UnitYears: 1.62, early: 0.2 },
    { cause: "installation", symptom: "noisy", per100UnitYears: 0.27, early: 20 },
    { cause: "supply", component: "ice_maker_or_water_valve", symptom: "no_ice", per100UnitYears: 0.81, early: 4 },
    { cause: "cosmetic", component: "cabinet", symptom: "damaged", per100UnitYears: 0.07, early: 40 },
    {
      cause: "surge_lightning",
      component: "main_or_inverter_board",
      symptom: "no_power",
      per100UnitYears: 0.41,
      early: 1,
    },
    { cause: "education", symptom: "no_ice", per100UnitYears: 0.81, early: 14 },
    { cause: "no_fault_found", symptom: "not_cold", per100UnitYears: 1.76, early: 5 },
  ],
  range_oven: [
    {
      cause: "misuse_accident",
      component: "surface_element_or_switch",
      symptom: "damaged",
      per100UnitYears: 0.68,
      early: 1,
    },
    { cause: "installation", component: "power_cord", symptom: "no_power", per100UnitYears: 0.14, early: 25 },
    { cause: "supply", symptom: "no_power", per100UnitYears: 0.54, early: 4 },
    { cause: "liquid_pest", component: "oven_control", symptom: "fault_code", per100UnitYears: 0.54, early: 1 },
    { cause: "education", symptom: "wrong_temperature", per100UnitYears: 0.54, early: 12 },
    { cause: "no_fault_found", symptom: "wrong_temperature", per100UnitYears: 0.94, early: 5 },
  ],
};
