import { describe, expect, test } from "vitest";
import type { Check } from "@/lib/evidence/check";
import { checkOf } from "@/lib/evidence/checks";
import { parseRangeForm, type RangeTexts } from "@/lib/sheets/range-form";

const of = (key: string): Check => checkOf(key) ?? noCheck(key);
function noCheck(key: string): never {
  throw new Error(`no check ${key}`);
}
const texts: RangeTexts = {
  low: "10",
  high: "20",
  unit: "ohm",
  condition: "",
  source: "tech sheet, page 4",
  mark: "published",
};

describe("a range that somebody sets for a model", () => {
  test("comma and point, one end open, another unit of the same kind", () => {
    expect(parseRangeForm({ ...texts, low: "1,5", high: "", unit: "kohm" }, of("pump_winding"))).toEqual({
      ok: true,
      range: {
        check: "pump_winding",
        low: 1.5,
        high: undefined,
        unit: "kohm",
        condition: undefined,
        source: "tech sheet, page 4",
        mark: "published",
      },
    });
  });
  test.each<[string, Partial<RangeTexts>, keyof RangeTexts, RegExp]>([
    ["low over high", { low: "20", high: "10" }, "low", /lower end, 20, is over the upper end, 10/],
    ["both blank", { low: " ", high: "" }, "low", /Both ends are blank/],
    ["no number", { high: "many" }, "high", /“many” is not a number/],
    [
      "a unit that measures something else",
      { unit: "psi" },
      "unit",
      /“psi” does not measure what Pump winding measures, which is in ohm/,
    ],
    ["no unit", { unit: "" }, "unit", /measured in ohm/],
    ["no source", { source: "" }, "source", /source is blank/],
    ["no mark", { mark: "" }, "mark", /how far the source carries/],
  ])("%s is named at its field", (_, part, field, sentence) => {
    const read = parseRangeForm({ ...texts, ...part }, of("pump_winding"));
    expect(read.ok ? [] : read.problems).toEqual([{ field, text: expect.stringMatching(sentence) }]);
  });
  test("a sensor's range needs the temperature at which it holds", () => {
    const sensor = of("dryer_thermistor");
    expect(parseRangeForm({ ...texts, unit: sensor.unit ?? "" }, sensor)).toMatchObject({
      ok: false,
      problems: [{ field: "condition" }],
    });
    expect(parseRangeForm({ ...texts, condition: "at 25 °C" }, sensor).ok).toBe(true);
  });
  test("what is only looked at has no range", () => {
    expect(parseRangeForm(texts, of("hose"))).toMatchObject({ ok: false, problems: [{ field: "unit" }] });
  });
});
