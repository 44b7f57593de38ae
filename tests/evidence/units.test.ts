// By hand: 0 °C = 32 °F, 25 °C = 77 °F; 1 in = 2.54 cm; 1 psi = 6.894757 kPa; 1 in of water = 249.08891 Pa; 1 oz = 28.349523 g.
import { expect, test } from "vitest";
import { temperatureIn } from "@/lib/evidence/temperature-in";
import { inUnit } from "@/lib/evidence/units";

test.each([
  [1.5, "kohm", "ohm", 1500],
  [2, "MΩ", "ohm", 2e6],
  [32, "°F", "°C", 0],
  [77, "F", "C", 25],
  [25, "°C", "°F", 77],
  [25.4, "cm", "in", 10],
  [689.4757, "kPa", "psi", 100],
  [249.08891, "Pa", "in w.c.", 1],
  [28.349523, "g", "oz", 1],
  [119, "V AC", "V", 119],
  [800, "mA", "A", 0.8],
])("%d %s is the same in %s: %d", (value, from, to, same) => {
  expect(inUnit(value, from, to)).toBeCloseTo(same, 9);
});

test.each([
  ["ohm", "V"],
  ["psi", "in w.c."],
  ["furlong", "in"],
  ["", "ohm"],
])("%s and %s do not compare", (from, to) => {
  expect(inUnit(1, from, to)).toBeUndefined();
});

test.each([
  ["at 30 °C", 30],
  ["30 C, first family", 30],
  ["75 F, first family", 23.888888888888889],
  ["-20 °C", -20],
  ["AC pump", undefined],
  [undefined, undefined],
])("the condition %s names %s °C", (condition, celsius) => {
  const read = temperatureIn(condition);
  if (celsius === undefined) expect(read).toBeUndefined();
  else expect(read).toBeCloseTo(celsius, 9);
});
