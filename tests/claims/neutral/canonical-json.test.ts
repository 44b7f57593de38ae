import { expect, test } from "vitest";
import { canonicalJson } from "@/lib/claims/neutral/canonical-json";

// RFC 8785, section 3.2.2 (input) and 3.2.3 (output), from memory; the expected text is also what its rules give by hand:
// keys by UTF-16 units, shortest numbers, only the escapes that JSON itself asks for.
test("the scheme's own example gives the scheme's own text", () => {
  const value = {
    numbers: [Number("333333333.33333329"), 1e30, 4.5, 2e-3, 0.000000000000000000000000001],
    string: "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"/",
    literals: [null, true, false],
  };
  expect(canonicalJson(value)).toBe(
    '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
  );
});

// RFC 8785, section 3.2.3: names sort by their UTF-16 units, so the smiley (a surrogate pair) comes before U+FB33.
test("keys sort by UTF-16 units", () => {
  const names = ["\u20ac", "\r", "\ufb33", "1", "\ud83d\ude00", "\u0080", "\u00f6"];
  const text = canonicalJson(Object.fromEntries(names.map((name) => [name, 0])));
  expect(Object.keys(JSON.parse(text) as object)).toEqual([
    "1",
    "\r",
    "\u0080",
    "\u00f6",
    "\u20ac",
    "\ud83d\ude00",
    "\ufb33",
  ]);
});

test("the order in which properties were made does not matter, the order of a list does", () => {
  expect(canonicalJson({ b: 1, a: { d: 2, c: 3 } })).toBe(canonicalJson({ a: { c: 3, d: 2 }, b: 1 }));
  expect(canonicalJson([1, 2])).not.toBe(canonicalJson([2, 1]));
});

test.each([[Number.NaN], [Number.POSITIVE_INFINITY], [undefined], ["\ud800"], [{ a: [undefined] }]])(
  "what JSON cannot say is refused: %o",
  (value) => {
    expect(() => canonicalJson(value)).toThrow(RangeError);
  },
);
