// R = V²/P by Ohm's law. The law is not in doubt; what may be wrong are the band around it, the trade's table, and the ranges
// that the sheets show. So each is held against what makers print.
import { describe, expect, test } from "vitest";
import { checkOf } from "@/lib/evidence/checks";
import published from "../evidence/published-entries.json";
import { type PrintedHeater, printedHeaters, withoutCounterpart } from "./heaters-in-print";

/**
 * Within 10 % of V²/P: common practice, and printed by one maker of absorption refrigerators ("the acceptable tolerance range on the
 * ohms value is 10 percent", else the element is replaced). Another maker prints its bias heater as 2,400 ± 240 ohm (MS9).
 */
const band = 0.1;
/** The lowest printed ohms over V²/P: a plate states the power of a hot element, a meter reads a cold one. */
const coldest = 0.87;

const plate = (volts: number, watts: number) => volts ** 2 / watts;

/** Share of V²/P that the printed ohms are, lowest and highest. */
function shares({ volts, watts: [least, most], ohms: [low, high] }: PrintedHeater): readonly [number, number] {
  return [low / plate(volts, least), high / plate(volts, most)];
}

describe("printed ohms against V²/P of the printed plate", () => {
  const meets = ([low, high]: readonly [number, number]) => low <= 1 + band && high >= 1 - band;
  const named = (keep: (heater: PrintedHeater) => boolean) => printedHeaters.filter(keep).map(({ name }) => name);

  test("three of eleven meet the band of 10 %, seven read colder than it, and one print contradicts itself", () => {
    expect(named((heater) => meets(shares(heater)))).toEqual([
      "dishwasher heater, wet",
      "dishwasher heater, dry",
      "defrost heater",
    ]);
    const below = printedHeaters.filter((heater) => shares(heater)[1] < 1 - band);
    expect(below.map(({ name }) => name)).toEqual([
      "flow-through dishwasher heater",
      ...named(({ name }) => name.startsWith("dryer")),
    ]);
    for (const heater of below) expect(shares(heater)[1], heater.name).toBeGreaterThanOrEqual(coldest);
    expect(named((heater) => shares(heater)[0] > 1 + band)).toEqual(["convection element"]);
  });
  // 1,400 W at 120 V are 10.3 ohm. The printed 40 begins where the same power at 240 V lies, 41.1: the sheet's volts or its ohms
  // belong to another oven. No range is shipped for it.
  test("the convection element's printed ohms hold at 240 V and not at the printed 120 V", () => {
    const asPrinted = printedHeaters.filter(({ name }) => name === "convection element");
    expect(asPrinted.map((heater) => meets(shares(heater)))).toEqual([false]);
    expect(asPrinted.map((heater) => meets(shares({ ...heater, volts: 240 })))).toEqual([true]);
  });
  test("the dishwasher's print is V²/P to its last digit", () => {
    const wetAndDry = printedHeaters.filter(({ name }) => name.startsWith("dishwasher"));
    expect(wetAndDry).toHaveLength(2);
    for (const heater of wetAndDry) expect(shares(heater)[0]).toBeCloseTo(1, 9);
  });
});

// The trade's table words its derived values "2,585 W = 22 ohm … at 240 V". Each is computed anew from its own words.
const texts = published.entries.flatMap(({ id, required_checks }) =>
  required_checks.map(({ expect: words }) => ({ id, words })),
);
const worded = texts.flatMap(({ id, words }) =>
  [...words.matchAll(/([\d,]+) W(?: at \d+ V)? = ([\d.]+) ohm/g)].map(([, watts = "", ohms = ""]) => ({
    id,
    volts: Number(words.match(/at (\d+) V/)?.[1]),
    watts: Number(watts.replace(",", "")),
    ohms: Number(ohms),
    digits: ohms.split(".")[1]?.length ?? 0,
  })),
);
const checkOfEntry: Readonly<Record<string, string>> = {
  "FL-HEATER": "water_heater",
  "RG-BAKE": "bake_element",
  "RG-BROIL": "broil_element",
  "RG-SURF": "surface_element",
};

describe("values that the trade's table derives", () => {
  test("there are six of them", () => expect(worded).toHaveLength(6));
  test.each(worded)("$id: $watts W at $volts V are $ohms ohm", ({ volts, watts, ohms, digits }) => {
    expect(plate(volts, watts).toFixed(digits)).toBe(ohms.toFixed(digits));
  });
});

// Nobody may be shown a good heater as outside the range that the sheet ships, cold or at the edge of the band.
describe("ranges that the sheets ship hold every plate of the table and its print", () => {
  const plates = [
    ...worded.map(({ id, volts, watts }) => ({ check: checkOfEntry[id] ?? id, ohms: plate(volts, watts) })),
    { check: "dryer_element", ohms: plate(240, 5_000) },
    { check: "dryer_element", ohms: plate(240, 6_000) },
    ...[550, 600].map((watts) => ({ check: "defrost_heater", ohms: plate(115, watts) })),
    ...[500, 800, 120 * 9.5].map((watts) => ({ check: "dish_heater", ohms: plate(120, watts) })),
  ];
  test.each(plates)("$check of $ohms ohm by its plate, cold and within 10 %", ({ check, ohms }) => {
    const [range] = checkOf(check)?.general ?? [];
    expect(range?.low, check).toBeLessThanOrEqual(coldest * ohms);
    expect(range?.high, check).toBeGreaterThanOrEqual((1 + band) * ohms);
    expect(range?.screensOnly, "a plate's range never decides: the model sheet does").toBe(true);
  });
  test.each(printedHeaters.filter(({ check }) => check !== undefined))("$name as printed", ({ check = "", ohms }) => {
    const [range] = checkOf(check)?.general ?? [];
    expect(range?.low).toBeLessThanOrEqual(ohms[0]);
    expect(range?.high).toBeGreaterThanOrEqual(ohms[1]);
  });
  test("the current of a forced defrost holds 550 to 600 W at 115 to 120 V, within 10 %", () => {
    const [range] = checkOf("defrost_current")?.general ?? [];
    expect(range?.low).toBeLessThanOrEqual((1 - band) * (550 / 120));
    expect(range?.high).toBeGreaterThanOrEqual((1 + band) * (600 / 115));
  });
});

// Every heater of the table that is measured in ohms is either held against a print above or said to have none.
test("heaters without a counterpart in print are these and no others", () => {
  const heaters = published.entries.filter(({ required_checks }) =>
    required_checks.some(
      ({ check, range }) =>
        /element|heater/i.test(check) && !/ground|thermostat/i.test(check) && range?.unit === "ohm" && range.min > 1,
    ),
  );
  const held: Readonly<Record<string, string>> = { "DW-HEAT": "dish_heater", "RF-DEFHEAT": "defrost_heater" };
  for (const check of Object.values(held)) expect(printedHeaters.map((heater) => heater.check)).toContain(check);
  expect(heaters.map(({ id }) => id).sort()).toEqual([...Object.keys(withoutCounterpart), ...Object.keys(held)].sort());
});
