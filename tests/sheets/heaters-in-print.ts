// Heaters of which makers print voltage, power or current, and ohms. Read in stored copies of the sheets; makers' names withheld.

export interface PrintedHeater {
  readonly name: string;
  /** Check of the catalogue whose shipped range should hold the printed ohms; undefined for kinds that the sheets do not cover. */
  readonly check: string | undefined;
  readonly volts: number;
  /** Smallest and largest printed; a current times the voltage where the sheet gives amperes. */
  readonly watts: readonly [number, number];
  readonly ohms: readonly [number, number];
  readonly source: string;
}

const dishwasher =
  "technical guide of a dishwasher (as MS15): 120 V, 800 W wet and 500 W dry, both ± 5 %, 6.67 and 4.17 A";
const dryer =
  "service manual of a small tumble dryer: two branches by version, volts, W (-2 +8 %) and ohms in one table";
const flow =
  "service manual of a dishwasher (MS13): 120 V at the heater's wire, about 9.5 A in it, heater about 11 ohm";
const defrost =
  "service manual of a refrigerator (MS19): a wattmeter at the plug reads 550-600 W, small heaters and timer included; about 20-23 ohm. " +
  "No voltage printed; plates of such refrigerators say 115 V (common practice)";
const convection = "service manual of a combination oven: 1,400 W, 120 V AC, 40 to 90 ohm at 68 °F";

export const printedHeaters: readonly PrintedHeater[] = [
  one("dishwasher heater, wet", "dish_heater", [120, 800, 18], dishwasher),
  one("dishwasher heater, dry", "dish_heater", [120, 500, 28.8], dishwasher),
  one("flow-through dishwasher heater", "dish_heater", [120, 120 * 9.5, 11], flow),
  one("dryer, 240 V, branch of 1,400 W", undefined, [240, 1_400, 36], dryer),
  one("dryer, 230 V, branch of 1,400 W", undefined, [230, 1_400, 33], dryer),
  one("dryer, 240 V, branch of 1,000 W", undefined, [240, 1_000, 51], dryer),
  one("dryer, 240 V, branch of 800 W", undefined, [240, 800, 63], dryer),
  one("dryer, 240 V, branch of 600 W", undefined, [240, 600, 85], dryer),
  one("dryer, 230 V, branch of 600 W", undefined, [230, 600, 78], dryer),
  { name: "defrost heater", check: "defrost_heater", volts: 115, watts: [550, 600], ohms: [20, 23], source: defrost },
  {
    name: "convection element",
    check: undefined,
    volts: 120,
    watts: [1_400, 1_400],
    ohms: [40, 90],
    source: convection,
  },
];

/** Published heaters that give ohms and no power, or power and no ohms: nothing to hold V²/P against. */
export const withoutCounterpart: Readonly<Record<string, string>> = {
  "FL-HEATER": "power of an example and no printed ohms",
  "ED-ELEMENT": "5-6 kW, from ratings, and no printed ohms",
  "ED-STAT": "the bias heater's 2,400 ± 240 ohm are printed (MS9) and its power is not",
  "RG-BAKE": "printed powers and no printed ohms",
  "RG-BROIL": "printed power and no printed ohms",
  "RG-SURF": "printed powers and no printed ohms",
};

function one(
  name: string,
  check: string | undefined,
  [volts, watts, ohms]: readonly [number, number, number],
  source: string,
): PrintedHeater {
  return { name, check, volts, watts: [watts, watts], ohms: [ohms, ohms], source };
}
