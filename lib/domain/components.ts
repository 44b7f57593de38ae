// The parts of an appliance that jobs name, in a tree. Keys are stable: intake files, evidence entries and coverage
// classes refer to them. Names are the trade's; the grouping is common practice, no source.
import type { ProductType } from "./product-type";

const washers = ["front_load_washer", "top_load_washer"] as const;
const dryers = ["electric_dryer", "gas_dryer"] as const;
const laundry = [...washers, ...dryers] as const;
const wet = [...washers, "dishwasher"] as const;
const household = [...laundry, "dishwasher", "refrigerator", "range_oven"] as const;

export const components: readonly Component[] = [
  { key: "drain_system", name: "Drain system", productTypes: wet },
  { key: "drain_pump", name: "Drain pump", partOf: "drain_system", productTypes: wet },
  { key: "drain_path", name: "Drain path", partOf: "drain_system", productTypes: wet },
  { key: "drain_hose", name: "Drain hose", partOf: "drain_system", productTypes: wet },
  { key: "drain_filter", name: "Drain filter or trap", partOf: "drain_system", productTypes: wet },
  { key: "check_valve", name: "Check valve", partOf: "drain_system", productTypes: wet },

  { key: "water_supply", name: "Water supply", productTypes: [...wet, "refrigerator"] },
  { key: "inlet_valve", name: "Inlet valve", partOf: "water_supply", productTypes: wet },
  { key: "inlet_hose", name: "Inlet hose", partOf: "water_supply", productTypes: wet },
  {
    key: "pressure_sensor",
    name: "Level sensor or pressure switch",
    partOf: "water_supply",
    productTypes: ["front_load_washer"],
  },
  { key: "pressure_transducer", name: "Level transducer", partOf: "water_supply", productTypes: ["top_load_washer"] },
  { key: "float_or_flood_switch", name: "Float or flood switch", partOf: "water_supply", productTypes: ["dishwasher"] },
  { key: "dispenser", name: "Dispenser", partOf: "water_supply", productTypes: wet },

  { key: "electrical_system", name: "Controls and wiring", productTypes: household },
  {
    key: "control_board",
    name: "Control board",
    partOf: "electrical_system",
    productTypes: [...laundry, "dishwasher"],
  },
  {
    key: "main_or_inverter_board",
    name: "Main or inverter board",
    partOf: "electrical_system",
    productTypes: ["refrigerator"],
  },
  { key: "oven_control", name: "Oven control", partOf: "electrical_system", productTypes: ["range_oven"] },
  { key: "user_interface", name: "User interface or keypad", partOf: "electrical_system", productTypes: household },
  { key: "wire_harness", name: "Wire harness or connector", partOf: "electrical_system", productTypes: household },
  { key: "power_cord", name: "Power cord or terminal block", partOf: "electrical_system", productTypes: household },
  {
    key: "noise_filter",
    name: "Line noise filter",
    partOf: "electrical_system",
    productTypes: [...laundry, "dishwasher"],
  },

  { key: "door_system", name: "Door and lid", productTypes: household },
  { key: "door_lock", name: "Door lock", partOf: "door_system", productTypes: ["front_load_washer"] },
  { key: "lid_lock", name: "Lid lock", partOf: "door_system", productTypes: ["top_load_washer"] },
  { key: "door_boot", name: "Door boot", partOf: "door_system", productTypes: ["front_load_washer"] },
  { key: "door_switch", name: "Door switch", partOf: "door_system", productTypes: [...dryers, "refrigerator"] },
  { key: "door_latch_switch", name: "Door latch switch", partOf: "door_system", productTypes: ["dishwasher"] },
  { key: "door_lock_motor", name: "Door-lock motor", partOf: "door_system", productTypes: ["range_oven"] },
  { key: "door_hinge", name: "Door hinge or handle", partOf: "door_system", productTypes: household },
  {
    key: "door_gasket",
    name: "Door gasket",
    partOf: "door_system",
    productTypes: ["dishwasher", "refrigerator", "range_oven"],
  },

  { key: "drive_system", name: "Drive and suspension", productTypes: laundry },
  { key: "drive_motor", name: "Drive motor", partOf: "drive_system", productTypes: ["front_load_washer", ...dryers] },
  {
    key: "drive_motor_and_capacitor",
    name: "Drive motor and capacitor",
    partOf: "drive_system",
    productTypes: ["top_load_washer"],
  },
  { key: "drive_belt", name: "Drive belt", partOf: "drive_system", productTypes: washers },
  { key: "belt_idler_rollers", name: "Belt, idler and rollers", partOf: "drive_system", productTypes: dryers },
  { key: "tub_bearing", name: "Tub bearing and seal", partOf: "drive_system", productTypes: washers },
  { key: "shock_absorber", name: "Shock absorber", partOf: "drive_system", productTypes: ["front_load_washer"] },
  { key: "suspension_rods", name: "Suspension rods", partOf: "drive_system", productTypes: ["top_load_washer"] },
  { key: "shift_actuator", name: "Shift actuator", partOf: "drive_system", productTypes: ["top_load_washer"] },
  { key: "gearcase_or_clutch", name: "Gearcase or clutch", partOf: "drive_system", productTypes: ["top_load_washer"] },
  { key: "tub", name: "Tub or drum", partOf: "drive_system", productTypes: [...laundry, "dishwasher"] },

  { key: "heating_system", name: "Heating", productTypes: [...laundry, "dishwasher", "range_oven"] },
  {
    key: "water_heater_element",
    name: "Water heater element",
    partOf: "heating_system",
    productTypes: ["front_load_washer"],
  },
  {
    key: "water_temperature_sensor",
    name: "Water temperature sensor",
    partOf: "heating_system",
    productTypes: ["front_load_washer"],
  },
  { key: "heating_element", name: "Heating element", partOf: "heating_system", productTypes: ["electric_dryer"] },
  {
    key: "thermal_cutoff_or_fuse",
    name: "Thermal cut-off or fuse",
    partOf: "heating_system",
    productTypes: ["electric_dryer"],
  },
  { key: "thermal_fuse", name: "Thermal fuse", partOf: "heating_system", productTypes: ["gas_dryer"] },
  { key: "thermistor", name: "Thermistor", partOf: "heating_system", productTypes: [...dryers, "refrigerator"] },
  {
    key: "cycling_or_limit_thermostat",
    name: "Cycling or limit thermostat",
    partOf: "heating_system",
    productTypes: dryers,
  },
  { key: "moisture_sensor", name: "Moisture sensor", partOf: "heating_system", productTypes: dryers },
  { key: "blower", name: "Blower wheel", partOf: "heating_system", productTypes: dryers },
  { key: "vent_path", name: "Vent and lint path", partOf: "heating_system", productTypes: dryers },
  { key: "heater", name: "Heater", partOf: "heating_system", productTypes: ["dishwasher"] },
  { key: "temperature_sensor", name: "Temperature sensor", partOf: "heating_system", productTypes: ["dishwasher"] },
  { key: "bake_element", name: "Bake element", partOf: "heating_system", productTypes: ["range_oven"] },
  { key: "broil_element", name: "Broil element", partOf: "heating_system", productTypes: ["range_oven"] },
  {
    key: "surface_element_or_switch",
    name: "Surface element or switch",
    partOf: "heating_system",
    productTypes: ["range_oven"],
  },
  {
    key: "oven_temperature_sensor",
    name: "Oven temperature sensor",
    partOf: "heating_system",
    productTypes: ["range_oven"],
  },

  { key: "gas_system", name: "Gas system", productTypes: ["gas_dryer", "range_oven"] },
  { key: "igniter", name: "Igniter", partOf: "gas_system", productTypes: ["gas_dryer"] },
  { key: "gas_valve_coils", name: "Gas valve coils", partOf: "gas_system", productTypes: ["gas_dryer"] },
  { key: "flame_sensor", name: "Flame sensor", partOf: "gas_system", productTypes: ["gas_dryer"] },
  { key: "gas_valve_body", name: "Gas valve body", partOf: "gas_system", productTypes: ["gas_dryer"] },
  { key: "oven_igniter", name: "Oven igniter", partOf: "gas_system", productTypes: ["range_oven"] },
  { key: "oven_safety_valve", name: "Oven safety valve", partOf: "gas_system", productTypes: ["range_oven"] },
  { key: "spark_module_or_switch", name: "Spark module or switch", partOf: "gas_system", productTypes: ["range_oven"] },

  { key: "wash_system", name: "Wash system", productTypes: ["dishwasher"] },
  { key: "circulation_pump", name: "Circulation pump", partOf: "wash_system", productTypes: ["dishwasher"] },
  { key: "spray_arm", name: "Spray arm", partOf: "wash_system", productTypes: ["dishwasher"] },
  { key: "dish_rack", name: "Dish rack", partOf: "wash_system", productTypes: ["dishwasher"] },

  { key: "sealed_system", name: "Sealed system", productTypes: ["refrigerator"] },
  { key: "compressor", name: "Compressor", partOf: "sealed_system", productTypes: ["refrigerator"] },
  { key: "cooling_system", name: "Cooling and airflow", productTypes: ["refrigerator"] },
  {
    key: "start_device_and_overload",
    name: "Start device and overload",
    partOf: "cooling_system",
    productTypes: ["refrigerator"],
  },
  {
    key: "evaporator_fan_motor",
    name: "Evaporator fan motor",
    partOf: "cooling_system",
    productTypes: ["refrigerator"],
  },
  { key: "condenser_fan_motor", name: "Condenser fan motor", partOf: "cooling_system", productTypes: ["refrigerator"] },
  { key: "air_damper", name: "Air damper", partOf: "cooling_system", productTypes: ["refrigerator"] },
  { key: "defrost_system", name: "Defrost system", productTypes: ["refrigerator"] },
  { key: "defrost_heater", name: "Defrost heater", partOf: "defrost_system", productTypes: ["refrigerator"] },
  {
    key: "defrost_thermostat_or_fuse",
    name: "Defrost thermostat or fuse",
    partOf: "defrost_system",
    productTypes: ["refrigerator"],
  },
  {
    key: "ice_maker_or_water_valve",
    name: "Ice maker or water valve",
    partOf: "water_supply",
    productTypes: ["refrigerator"],
  },

  { key: "cabinet", name: "Cabinet, panel or trim", productTypes: household },
  { key: "valve_seat", name: "Valve seat", productTypes: ["other_equipment"] },
  { key: "bearing_cage", name: "Bearing cage", productTypes: ["other_equipment"] },
];

export interface Component {
  readonly key: string;
  readonly name: string;
  /** Key of the group it belongs to; absent at the top of the tree. */
  readonly partOf?: string;
  readonly productTypes: readonly ProductType[];
}

const byKey: ReadonlyMap<string, Component> = new Map(components.map((component) => [component.key, component]));

/** The component of that key, or undefined where the catalogue has none. */
export function componentOf(key: string): Component | undefined {
  return byKey.get(key);
}

/** The component's own key, then its groups outwards: drain_pump, drain_system. Empty for an unknown key. */
export function componentPath(key: string): readonly string[] {
  const path: string[] = [];
  for (
    let step = byKey.get(key);
    step !== undefined;
    step = step.partOf === undefined ? undefined : byKey.get(step.partOf)
  ) {
    path.push(step.key);
  }
  return path;
}
