import { expect, test } from "vitest";
import { parsedJson } from "@/lib/format/parsed-json";
import { typedCents } from "@/lib/format/typed-cents";

test.each([
  ["65", 6_500],
  ["65.5", 6_550],
  ["0.05", 5],
  ["65,00", 6_500],
  ["1,234.50", 123_450],
  ["1 234", 123_400],
  ["123456789", 12_345_678_900],
])("%s is an amount as typed", (text, cents) => {
  expect(typedCents(text, 9)).toBe(cents);
});

test.each(["", "-1", "6.505", "1.2.3", "12 €", "1e3", "1234567890"])("%j is none", (text) => {
  expect(typedCents(text, 9)).toBeUndefined();
});

test("a text that is no JSON says nothing", () => {
  expect([parsedJson('{"a":1}'), parsedJson("null"), parsedJson("{a}"), parsedJson("")]).toEqual([
    { a: 1 },
    null,
    undefined,
    undefined,
  ]);
});
