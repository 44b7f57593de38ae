// How often each component fails, as the demo draws it. Which faults lead follows public studies of repair data (washers:
// electronics, suspension and bearings, doors, brushes, pumps; dishwashers: pumps, electronics, valves), from memory;
// the numbers are invented. Shape below 1 is early failure, 1 is chance, above 1 is wear.
import type { Model } from "./models";

/**
 * Component, Weibull shape, and failures per 100 units in the first five years where each is renewed: that is
 * 100 × (5 years / scale)^shape.
 */
type LifeRow = readonly [component: string, shape: number, per100InFiveYears: number];

export const componentLives: Readonly<Record<Model["productType"], readonly LifeRow[]>> = {
  front_load_washer: [
    ["drain_pump", 1.3, 13],
    ["control_board", 0.85, 13],
    ["door_lock", 1.1, 10],
    ["shock_absorber", 2, 8],
    ["drive_motor", 1.4, 7],
    ["door_boot", 1.8, 6],
    ["tub_bearing", 2.6, 5],
    ["inlet_valve", 1.2, 5],
    ["water_heater_element", 1.6, 4],
    ["pressure_sensor", 1, 3],
    ["drive_belt", 2.2, 3],
    ["user_interface", 0.9, 3],
    ["water_temperature_sensor", 1, 2],
    ["wire_harness", 0.9, 2],
  ],
  top_load_washer: [
    ["lid_lock", 1.1, 11],
    ["drain_pump", 1.3, 10],
    ["control_board", 0.85, 10],
    ["suspension_rods", 2, 10],
    ["shift_actuator", 1.3, 8],
    ["drive_motor_and_capacitor", 1.5, 6],
    ["inlet_valve", 1.2, 5],
    ["gearcase_or_clutch", 2.2, 5],
    ["pressure_transducer", 1, 4],
    ["drive_belt", 2.2, 3],
    ["tub_bearing", 2.6, 2],
    ["wire_harness", 0.9, 1.5],
  ],
  electric_dryer: [
    ["belt_idler_rollers", 2.2, 12],
    ["heating_element", 1.6, 11],
    ["thermal_cutoff_or_fuse", 1.1, 9],
    ["control_board", 0.85, 6],
    ["door_switch", 1.2, 6],
    ["drive_motor", 1.5, 5],
    ["cycling_or_limit_thermostat", 1.2, 5],
    ["thermistor", 1, 4],
    ["blower", 1.8, 2.5],
    ["moisture_sensor", 1, 2],
  ],
  gas_dryer: [
    ["belt_idler_rollers", 2.2, 12],
    ["igniter", 1.5, 11],
    ["gas_valve_coils", 1.6, 10],
    ["thermal_fuse", 1.1, 7],
    ["control_board", 0.85, 6],
    ["door_switch", 1.2, 5],
    ["drive_motor", 1.5, 5],
    ["flame_sensor", 1.2, 4],
    ["moisture_sensor", 1, 2],
    ["gas_valve_body", 1, 1],
  ],
  dishwasher: [
    ["circulation_pump", 1.4, 10],
    ["control_board", 0.85, 9],
    ["drain_pump", 1.3, 8],
    ["door_latch_switch", 1.2, 7],
    ["inlet_valve", 1.2, 6],
    ["dispenser", 1.3, 6],
    ["heater", 1.5, 6],
    ["float_or_flood_switch", 1, 4],
    ["door_hinge", 1.6, 4],
    ["door_gasket", 2, 3],
    ["temperature_sensor", 1, 2],
  ],
  refrigerator: [
    ["ice_maker_or_water_valve", 1.1, 17],
    ["evaporator_fan_motor", 1.4, 10],
    ["main_or_inverter_board", 0.85, 9],
    ["defrost_heater", 1.5, 7],
    ["defrost_thermostat_or_fuse", 1.3, 6],
    ["condenser_fan_motor", 1.5, 5],
    ["start_device_and_overload", 1.4, 5],
    ["thermistor", 1, 5],
    ["door_gasket", 2, 5],
    ["compressor", 1.3, 4],
    ["sealed_system", 1.1, 4],
    ["air_damper", 1.2, 4],
    ["door_switch", 1.1, 2],
  ],
  range_oven: [
    ["oven_control", 0.85, 10],
    ["surface_element_or_switch", 1.4, 12],
    ["bake_element", 1.6, 11],
    ["oven_igniter", 1.5, 12],
    ["spark_module_or_switch", 1.3, 8],
    ["broil_element", 1.6, 5],
    ["oven_temperature_sensor", 1, 5],
    ["door_hinge", 1.6, 4],
    ["door_lock_motor", 1, 4],
    ["oven_safety_valve", 1, 2],
  ],
};

/** Components that only one fuel has; every other component belongs to both. */
export const fuelOfComponent: Readonly<Partial<Record<string, Model["fuel"]>>> = {
  oven_igniter: "gas",
  oven_safety_valve: "gas",
  spark_module_or_switch: "gas",
  bake_element: "electric",
  broil_element: "electric",
  surface_element_or_switch: "electric",
};

/** Multiplies every component's hazard, so that the company's size gives the wanted number of jobs. */
export const hazardOfTheDemo = 1.4;
