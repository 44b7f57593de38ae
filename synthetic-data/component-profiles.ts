// What a repair of each component looks like: symptom the customer gives, how the part failed, minutes of work, what the
// part costs. All of it invented within common practice, no source.

export interface ComponentProfile {
  readonly symptoms: readonly string[];
  readonly modes: readonly string[];
  readonly minutes: number;
  readonly partCents: number;
  /** Pieces fitted at once. */
  readonly pieces?: number;
  /** Chance that a small second part goes with it (clamp, seal, tape, fuse). */
  readonly smallPart?: number;
}

export const componentProfiles: Readonly<Record<string, ComponentProfile>> = {
  drain_pump: {
    symptoms: ["will_not_drain", "will_not_drain", "fault_code", "noisy"],
    modes: ["winding_open", "impeller_loose", "impeller_seized", "impeller_cracked"],
    minutes: 50,
    partCents: 7450,
    smallPart: 0.2,
  },
  control_board: {
    symptoms: ["no_power", "will_not_start", "fault_code", "stops_mid_cycle"],
    modes: ["no_output"],
    minutes: 45,
    partCents: 21800,
  },
  door_lock: {
    symptoms: ["will_not_start", "door_stays_locked", "fault_code"],
    modes: ["contact_open", "coil_open", "broken"],
    minutes: 40,
    partCents: 6200,
  },
  shock_absorber: { symptoms: ["shakes", "noisy"], modes: ["worn", "broken"], minutes: 55, partCents: 2700, pieces: 4 },
  drive_motor: {
    symptoms: ["will_not_tumble", "noisy", "fault_code"],
    modes: ["brushes_worn", "winding_open", "seized"],
    minutes: 75,
    partCents: 18900,
  },
  door_boot: { symptoms: ["leaks"], modes: ["torn"], minutes: 70, partCents: 9800, smallPart: 0.3 },
  tub_bearing: { symptoms: ["noisy"], modes: ["worn", "leaking"], minutes: 160, partCents: 14500, smallPart: 0.6 },
  inlet_valve: {
    symptoms: ["will_not_fill", "overfills", "fills_when_off"],
    modes: ["coil_open", "stuck", "leaking"],
    minutes: 35,
    partCents: 4600,
  },
  water_heater_element: {
    symptoms: ["wrong_water_temperature", "trips_breaker", "fault_code"],
    modes: ["element_open", "grounded"],
    minutes: 60,
    partCents: 5900,
    smallPart: 0.4,
  },
  pressure_sensor: {
    symptoms: ["overfills", "fault_code", "will_not_fill"],
    modes: ["no_signal"],
    minutes: 35,
    partCents: 4200,
  },
  drive_belt: { symptoms: ["will_not_spin", "noisy"], modes: ["worn", "broken"], minutes: 35, partCents: 2400 },
  user_interface: {
    symptoms: ["will_not_start", "no_power"],
    modes: ["broken", "no_signal"],
    minutes: 40,
    partCents: 11800,
  },
  water_temperature_sensor: {
    symptoms: ["wrong_water_temperature", "fault_code"],
    modes: ["out_of_curve", "open"],
    minutes: 35,
    partCents: 2600,
  },
  wire_harness: {
    symptoms: ["stops_mid_cycle", "will_not_start", "fault_code"],
    modes: ["harness_open"],
    minutes: 65,
    partCents: 5400,
  },
  lid_lock: {
    symptoms: ["will_not_start", "will_not_spin", "fault_code"],
    modes: ["contact_open", "coil_open", "broken"],
    minutes: 35,
    partCents: 5600,
  },
  suspension_rods: {
    symptoms: ["shakes", "noisy"],
    modes: ["worn", "broken"],
    minutes: 50,
    partCents: 1900,
    pieces: 4,
  },
  shift_actuator: {
    symptoms: ["will_not_spin", "will_not_agitate", "clicks"],
    modes: ["does_not_run", "no_signal"],
    minutes: 45,
    partCents: 5200,
  },
  drive_motor_and_capacitor: {
    symptoms: ["will_not_agitate", "hums"],
    modes: ["winding_open", "low_capacitance"],
    minutes: 65,
    partCents: 14200,
  },
  gearcase_or_clutch: {
    symptoms: ["will_not_agitate", "leaks_oil", "noisy"],
    modes: ["slips", "leaking"],
    minutes: 130,
    partCents: 19500,
  },
  pressure_transducer: { symptoms: ["overfills", "fault_code"], modes: ["no_signal"], minutes: 35, partCents: 3900 },
  belt_idler_rollers: {
    symptoms: ["will_not_tumble", "noisy"],
    modes: ["worn", "broken"],
    minutes: 60,
    partCents: 4800,
    smallPart: 0.3,
  },
  heating_element: {
    symptoms: ["will_not_heat"],
    modes: ["element_open", "grounded"],
    minutes: 55,
    partCents: 5900,
    smallPart: 0.3,
  },
  thermal_cutoff_or_fuse: {
    symptoms: ["will_not_heat"],
    modes: ["open"],
    minutes: 40,
    partCents: 2600,
    smallPart: 0.3,
  },
  door_switch: {
    symptoms: ["will_not_start", "wrong_temperature"],
    modes: ["contact_open", "broken"],
    minutes: 30,
    partCents: 2100,
  },
  cycling_or_limit_thermostat: {
    symptoms: ["overheats", "will_not_heat"],
    modes: ["out_of_band", "contact_welded", "contact_open"],
    minutes: 40,
    partCents: 2300,
  },
  thermistor: {
    symptoms: ["fault_code", "wrong_temperature"],
    modes: ["out_of_curve", "open"],
    minutes: 35,
    partCents: 2400,
  },
  blower: { symptoms: ["noisy", "dries_badly"], modes: ["broken", "worn"], minutes: 60, partCents: 3600 },
  moisture_sensor: { symptoms: ["never_ends", "dries_badly"], modes: ["open"], minutes: 35, partCents: 2900 },
  igniter: { symptoms: ["will_not_heat"], modes: ["open"], minutes: 45, partCents: 4100 },
  gas_valve_coils: { symptoms: ["will_not_heat"], modes: ["coil_open"], minutes: 40, partCents: 3200 },
  thermal_fuse: { symptoms: ["will_not_start", "will_not_heat"], modes: ["open"], minutes: 40, partCents: 2200 },
  flame_sensor: {
    symptoms: ["will_not_heat"],
    modes: ["contact_welded", "contact_open"],
    minutes: 40,
    partCents: 2800,
  },
  gas_valve_body: { symptoms: ["will_not_heat"], modes: ["does_not_open"], minutes: 80, partCents: 12600 },
  circulation_pump: {
    symptoms: ["washes_badly", "noisy", "fault_code"],
    modes: ["winding_open", "seized", "weak"],
    minutes: 80,
    partCents: 16800,
    smallPart: 0.3,
  },
  door_latch_switch: {
    symptoms: ["will_not_start", "stops_mid_cycle"],
    modes: ["contact_open", "broken"],
    minutes: 35,
    partCents: 3900,
  },
  dispenser: { symptoms: ["soap_not_released"], modes: ["coil_open", "stuck"], minutes: 45, partCents: 6100 },
  heater: {
    symptoms: ["will_not_heat", "fault_code"],
    modes: ["element_open", "grounded"],
    minutes: 55,
    partCents: 5700,
  },
  float_or_flood_switch: {
    symptoms: ["will_not_fill", "drain_pump_never_stops"],
    modes: ["stuck", "contact_open"],
    minutes: 35,
    partCents: 2500,
  },
  door_hinge: { symptoms: ["damaged", "noisy"], modes: ["broken", "worn"], minutes: 60, partCents: 5800, pieces: 2 },
  door_gasket: { symptoms: ["leaks", "wrong_temperature"], modes: ["torn", "leaking"], minutes: 45, partCents: 6900 },
  temperature_sensor: {
    symptoms: ["fault_code", "wrong_water_temperature"],
    modes: ["out_of_curve", "open"],
    minutes: 35,
    partCents: 2400,
  },
  ice_maker_or_water_valve: {
    symptoms: ["no_ice", "no_water", "leaks"],
    modes: ["no_harvest", "coil_open", "leaking"],
    minutes: 50,
    partCents: 12900,
    smallPart: 0.2,
  },
  evaporator_fan_motor: {
    symptoms: ["freezer_cold_fridge_warm", "not_cold", "noisy"],
    modes: ["does_not_run"],
    minutes: 55,
    partCents: 6400,
  },
  main_or_inverter_board: {
    symptoms: ["not_cold", "no_power", "fault_code"],
    modes: ["no_output"],
    minutes: 50,
    partCents: 19800,
  },
  defrost_heater: {
    symptoms: ["frost_build_up", "freezer_cold_fridge_warm"],
    modes: ["element_open"],
    minutes: 80,
    partCents: 5200,
    smallPart: 0.4,
  },
  defrost_thermostat_or_fuse: {
    symptoms: ["frost_build_up", "not_cold"],
    modes: ["open"],
    minutes: 70,
    partCents: 2700,
  },
  condenser_fan_motor: { symptoms: ["not_cold", "noisy"], modes: ["does_not_run"], minutes: 50, partCents: 6000 },
  start_device_and_overload: {
    symptoms: ["clicks", "not_cold"],
    modes: ["open", "low_capacitance"],
    minutes: 40,
    partCents: 3400,
  },
  compressor: {
    symptoms: ["not_cold", "hums"],
    modes: ["winding_open", "grounded", "no_start"],
    minutes: 230,
    partCents: 28500,
    smallPart: 0.9,
  },
  sealed_system: {
    symptoms: ["not_cold", "frost_build_up"],
    modes: ["leaking", "restriction"],
    minutes: 250,
    partCents: 16500,
    smallPart: 0.9,
  },
  air_damper: { symptoms: ["freezer_cold_fridge_warm", "too_cold"], modes: ["stuck"], minutes: 50, partCents: 5600 },
  oven_control: {
    symptoms: ["fault_code", "no_power", "wrong_temperature"],
    modes: ["no_output"],
    minutes: 50,
    partCents: 18700,
  },
  surface_element_or_switch: {
    symptoms: ["burner_will_not_heat", "burner_stuck_high"],
    modes: ["element_open", "contact_welded"],
    minutes: 40,
    partCents: 6800,
  },
  bake_element: { symptoms: ["will_not_heat"], modes: ["element_open", "grounded"], minutes: 35, partCents: 4400 },
  broil_element: { symptoms: ["will_not_heat"], modes: ["element_open"], minutes: 35, partCents: 4600 },
  oven_temperature_sensor: {
    symptoms: ["wrong_temperature", "fault_code"],
    modes: ["out_of_curve"],
    minutes: 35,
    partCents: 2800,
  },
  oven_igniter: { symptoms: ["will_not_light", "will_not_heat"], modes: ["weak"], minutes: 45, partCents: 5100 },
  oven_safety_valve: { symptoms: ["will_not_light"], modes: ["does_not_open"], minutes: 75, partCents: 11800 },
  spark_module_or_switch: { symptoms: ["clicks", "will_not_light"], modes: ["no_spark"], minutes: 45, partCents: 5900 },
  door_lock_motor: {
    symptoms: ["door_stays_locked", "fault_code"],
    modes: ["jammed", "does_not_run"],
    minutes: 65,
    partCents: 7600,
  },
};

/** @throws RangeError for a component that the demo does not repair */
export function profileOf(component: string): ComponentProfile {
  const profile = componentProfiles[component];
  if (profile === undefined) throw new RangeError(`component: no profile for ${component}`);
  return profile;
}
