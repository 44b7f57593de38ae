import { describe, expect, test } from "vitest";
import { typedValue } from "@/lib/sheets/typed-value";
import { pointSlip, unitSlip } from "@/lib/sheets/unit-slip";

describe("what is typed", () => {
  test.each([
    ["12.5", 12.5],
    ["12,5", 12.5],
    [" 12,50 ", 12.5],
    ["-18", -18],
    ["−18,5", -18.5],
    [".5", 0.5],
    ["0", 0],
    ["1,234", 1.234],
    ["1.234.567", 1_234_567],
    ["1.234,5", 1234.5],
    ["1,234.56", 1234.56],
  ])("%s is %f", (text, value) => {
    expect(typedValue(text)).toEqual({ kind: "value", value });
  });
  test.each(["abc", "12 ohm", "1e3", "--5", "5-", "0x10", "∞", "12..5"])("%s is no number, and says so", (text) => {
    expect(typedValue(text)).toMatchObject({ kind: "unclear", sentence: expect.stringContaining(text) });
  });
  test.each(["", "  ", "-"])("%j is empty", (text) => {
    expect(typedValue(text)).toEqual({ kind: "empty" });
  });
});

describe("slips that are asked about", () => {
  const pump = { low: 10, high: 20, unit: "ohm" };
  test("12 kΩ on a pump of 10–20 Ω: was it Ω?", () => {
    expect(unitSlip({ value: 12, unit: "kohm" }, pump)).toEqual({ unit: "ohm" });
  });
  test("a thermistor typed as 7.8 Ω whose sheet says 7,400–8,200 Ω: was it kΩ?", () => {
    expect(unitSlip({ value: 7.8, unit: "ohm" }, { low: 7_400, high: 8_200, unit: "ohm" })).toEqual({ unit: "kohm" });
  });
  test("146 on 10–20: was it 14.6?", () => {
    expect(pointSlip({ value: 146, unit: "ohm" }, pump)).toBe(14.6);
  });
  test("inside the range nothing is asked; far outside by no slip neither", () => {
    expect(unitSlip({ value: 12, unit: "ohm" }, pump)).toBeUndefined();
    expect(pointSlip({ value: 12, unit: "ohm" }, pump)).toBeUndefined();
    expect(unitSlip({ value: 55, unit: "ohm" }, pump)).toBeUndefined();
    expect(pointSlip({ value: 55, unit: "ohm" }, pump)).toBeUndefined();
  });
  test("a freezer at 0 that was typed in °F on a sheet in °C is asked about", () => {
    expect(unitSlip({ value: 32, unit: "°C" }, { low: -3, high: 3, unit: "°C" })).toEqual({ unit: "°F" });
  });
});
