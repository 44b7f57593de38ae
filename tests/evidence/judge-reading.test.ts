// The reading rules, each with a reading that obeys it and one that breaks it. Sources: a maker's resistance and voltage
// procedures (published sheets) for power off, isolated, load connected; the sensor rule and the two NTC families in one
// cabinet (published: 7.8k and 30k at 0 °C, ± 5 %); the igniter rule (published: 3.2-3.6 A good, under 2.9 A condemned);
// supply 110-126 V (utilization range A of the public voltage standard, from memory); 1 megohm (common practice, no source).
import { expect, test } from "vitest";
import type { ExpectedRange, Reading } from "@/lib/domain/reading";
import { isBad, isDecided, isGood } from "@/lib/evidence/decided";
import { type JudgingContext, judgeReading } from "@/lib/evidence/judge-reading";
import { plainReading } from "./job-record";

const washer: JudgingContext = {
  ranges: [],
  productType: "front_load_washer",
  interlocks: "pass",
  commanded: undefined,
};
const ohm = (value: number, unit = "ohm") => ({ kind: "number", value, unit }) as const;
const volt = (value: number) => ({ kind: "number", value, unit: "V" }) as const;

const winding = plainReading({ check: "pump_winding", outcome: ohm(15), sheetLow: 10, sheetHigh: 20 });
const atPump = plainReading({
  check: "pump_voltage",
  outcome: volt(119),
  mode: "volt_ac",
  power: "live",
  loadConnected: true,
  commanded: true,
  isolated: undefined,
});
const ntc = plainReading({ check: "fridge_ntc", outcome: ohm(30_000), temperatureC: 0 });

function range(check: string, low: number | undefined, high: number | undefined, condition?: string): ExpectedRange {
  return { check, low, high, unit: "ohm", condition, source: "model sheet", mark: "published" };
}

test("a winding read isolated with power off is judged against the range noted with it", () => {
  expect(judgeReading(winding, washer)).toMatchObject({
    kind: "inside",
    value: 15,
    range: { basis: "noted with the reading" },
  });
  expect(judgeReading({ ...winding, outcome: ohm(9) }, washer)).toMatchObject({ kind: "below", by: 1 });
  expect(judgeReading({ ...winding, outcome: ohm(23.5) }, washer)).toMatchObject({ kind: "above", by: 3.5 });
});

test.each([
  [10, "inside"],
  [9.99, "below"],
  [20, "inside"],
  [20.01, "above"],
])("the ends of a range belong to it: %d ohm is %s", (value, kind) => {
  expect(judgeReading({ ...winding, outcome: ohm(value) }, washer).kind).toBe(kind);
});

const broken: readonly (readonly [name: string, reading: Reading, rule: string])[] = [
  ["ohms with power on", { ...winding, power: "live" }, "power_on"],
  ["ohms with panels closed and power on", { ...winding, power: "powered_panels_closed" }, "power_on"],
  ["an open winding with power on", { ...winding, outcome: { kind: "open" }, power: "live" }, "power_on"],
  ["ohms in circuit", { ...winding, isolated: false }, "in_circuit"],
  ["ohms where nobody said whether isolated", { ...winding, isolated: undefined }, "isolation_not_stated"],
  ["a winding read in volts", { ...winding, mode: "volt_ac" }, "wrong_mode"],
  ["a winding in volts by its unit", { ...winding, outcome: volt(15) }, "wrong_unit"],
  ["a voltage with the power off", { ...atPump, power: "off" }, "power_off"],
  ["OL on a voltage range", { ...atPump, outcome: { kind: "open" } }, "wrong_mode"],
  ["line voltage read without its load", { ...atPump, loadConnected: false }, "load_off"],
  [
    "line voltage where nobody said whether the load was on",
    { ...atPump, loadConnected: undefined },
    "load_not_stated",
  ],
  ["zero volts without its load", { ...atPump, outcome: volt(0), loadConnected: false }, "load_off"],
  ["zero volts without a command", { ...atPump, outcome: volt(0), commanded: false }, "not_commanded"],
  [
    "zero volts where nobody said whether commanded",
    { ...atPump, outcome: volt(0), commanded: undefined },
    "not_commanded",
  ],
  [
    "a sensor without its temperature",
    { ...ntc, temperatureC: undefined, sheetLow: 28_500, sheetHigh: 31_500 },
    "no_temperature",
  ],
  ["an oven igniter's ohms", plainReading({ check: "oven_igniter_cold", outcome: ohm(90) }), "igniter_ohms"],
  [
    "a defrost thermostat read warm",
    plainReading({ check: "defrost_thermostat_cold", outcome: { kind: "open" }, temperatureC: 20 }),
    "too_warm",
  ],
  ["a check nobody knows", plainReading({ check: "aura", outcome: ohm(1) }), "unknown_check"],
  [
    "a word outside the list",
    plainReading({ check: "hose", mode: "observation", outcome: { kind: "finding", word: "bendy" } }),
    "unknown_word",
  ],
  [
    "a word that every object inherits",
    plainReading({ check: "hose", mode: "observation", outcome: { kind: "finding", word: "constructor" } }),
    "unknown_word",
  ],
  ["no reading", { ...winding, outcome: { kind: "no_reading" } }, "no_reading"],
];

test.each(broken)("%s proves nothing", (_name, reading, rule) => {
  const judgement = judgeReading(reading, washer);
  expect(judgement).toMatchObject({ kind: "proves_nothing", rule });
  expect(isDecided(judgement)).toBe(false);
});

test("zero volts count only with the interlocks shown to pass; line voltage needs no interlock", () => {
  const dead = { ...atPump, outcome: volt(0) };
  expect(judgeReading(dead, { ...washer, interlocks: "not_read" })).toMatchObject({ rule: "interlocks_not_shown" });
  expect(judgeReading(dead, { ...washer, interlocks: "fail" })).toMatchObject({ rule: "interlocks_not_shown" });
  expect(judgeReading(dead, washer)).toMatchObject({ kind: "below", value: 0, by: 110 });
  expect(judgeReading(atPump, { ...washer, interlocks: "not_read" }).kind).toBe("inside");
});

test("the drain-step check commands every reading that does not say otherwise itself", () => {
  const dead = { ...atPump, outcome: volt(0), commanded: undefined };
  expect(judgeReading(dead, { ...washer, commanded: true }).kind).toBe("below");
  expect(judgeReading({ ...dead, commanded: false }, { ...washer, commanded: true })).toMatchObject({
    rule: "not_commanded",
  });
});

test("OL and short are states: open fails a winding and passes insulation, short fails a winding and passes a contact", () => {
  const state = (check: string, kind: "open" | "short") =>
    judgeReading(plainReading({ check, outcome: { kind } }), washer);
  expect(state("pump_winding", "open")).toMatchObject({ kind: "open", good: false });
  expect(state("pump_winding", "short")).toMatchObject({ kind: "short", good: false });
  expect(state("winding_to_ground", "open")).toMatchObject({ kind: "open", good: true });
  expect(state("winding_to_ground", "short")).toMatchObject({ kind: "short", good: false });
  expect(state("lid_switch", "short")).toMatchObject({ kind: "short", good: true });
  expect(state("lid_switch", "open")).toMatchObject({ kind: "open", good: false });
});

// Published good pumps: 1.5 ohm (DC winding) and about 106 ohm (AC). Neither is condemned, nor cleared, without a sheet.
test.each([1.5, 15, 49, 51, 106, 4000])(
  "a winding of %d ohm without a sheet range is neither good nor bad",
  (value) => {
    const judgement = judgeReading(
      { ...winding, outcome: ohm(value), sheetLow: undefined, sheetHigh: undefined },
      washer,
    );
    expect(judgement).toMatchObject({
      range: { basis: "general", screensOnly: true, mark: "common practice, no source" },
    });
    expect([isGood(judgement), isBad(judgement)]).toEqual([false, false]);
  },
);

test("with its own model's range a 106 ohm pump is good and a 15 ohm one is not; a range noted with the reading goes first", () => {
  const context = { ...washer, ranges: [range("pump_winding", 100, 112)] };
  const bare = { ...winding, sheetLow: undefined, sheetHigh: undefined };
  expect(judgeReading({ ...bare, outcome: ohm(106) }, context)).toMatchObject({
    kind: "inside",
    range: { basis: "model", mark: "published" },
  });
  expect(judgeReading(bare, context)).toMatchObject({ kind: "below", by: 85 });
  expect(judgeReading(winding, context)).toMatchObject({ kind: "inside", range: { basis: "noted with the reading" } });
});

test("units are brought together: 0.015 kohm is 15 ohm, and 5 megohm is insulation", () => {
  expect(judgeReading({ ...winding, outcome: ohm(0.015, "kΩ") }, { ...washer, ranges: [] })).toMatchObject({
    kind: "below",
  });
  const bare = { ...winding, sheetLow: undefined, sheetHigh: undefined, outcome: ohm(0.015, "kΩ") };
  expect(judgeReading(bare, { ...washer, ranges: [range("pump_winding", 10, 20)] })).toMatchObject({
    kind: "inside",
    value: 15,
  });
  expect(judgeReading(plainReading({ check: "winding_to_ground", outcome: ohm(5, "MΩ") }), washer).kind).toBe("inside");
});

test("a sensor's range holds only at its own temperature, and the two families of one cabinet differ", () => {
  const fridge: JudgingContext = {
    ...washer,
    productType: "refrigerator",
    ranges: [range("fridge_ntc", 28_500, 31_500, "at 0 °C"), range("fridge_ntc", 10_450, 11_550, "at 77 F")],
  };
  expect(judgeReading(ntc, fridge)).toMatchObject({ kind: "inside", range: { low: 28_500 } });
  expect(judgeReading({ ...ntc, outcome: ohm(7800) }, fridge)).toMatchObject({ kind: "below" });
  expect(judgeReading({ ...ntc, outcome: ohm(11_000), temperatureC: 25 }, fridge)).toMatchObject({
    kind: "inside",
    range: { low: 10_450 },
  });
  expect(judgeReading({ ...ntc, temperatureC: 12 }, fridge)).toMatchObject({
    kind: "proves_nothing",
    rule: "no_range",
  });
});

test("an open sensor is failed at any temperature", () => {
  expect(judgeReading({ ...ntc, outcome: { kind: "open" }, temperatureC: undefined }, washer)).toMatchObject({
    kind: "open",
    good: false,
  });
});

test.each([
  [2.5, true, false],
  [2.89, true, false],
  [2.9, false, false],
  [3.1, false, false],
  [3.2, false, true],
  [3.6, false, true],
])("an oven igniter at %d A: condemned %s, good %s", (value, condemned, fine) => {
  const reading = plainReading({
    check: "oven_igniter_current",
    mode: "ampere",
    power: "live",
    outcome: { kind: "number", value, unit: "A" },
  });
  const judgement = judgeReading(reading, { ...washer, productType: "range_oven" });
  expect([isBad(judgement), isGood(judgement)]).toEqual([condemned, fine]);
});

test.each([
  ["front_load_washer", 110, "inside"],
  ["front_load_washer", 109, "below"],
  ["gas_dryer", 126, "inside"],
  ["gas_dryer", 127, "above"],
  ["electric_dryer", 120, "below"],
  ["electric_dryer", 240, "inside"],
  ["range_oven", 253, "above"],
] as const)("the supply of a %s at %d V is %s", (productType, value, kind) => {
  const reading = plainReading({ check: "supply_voltage", mode: "volt_ac", power: "live", outcome: volt(value) });
  expect(judgeReading(reading, { ...washer, productType }).kind).toBe(kind);
});
