import { describe, expect, test } from "vitest";
import { contrast, fromHex, labAsSeen, mix, type Triple, type Vision, visions } from "./palette/colour";
import { colourDifference } from "./palette/colour-difference";
import { readTokens, type Scheme, schemes } from "./palette/css-tokens";

// The colours as they stand in the stylesheet, held to what people with low or colour-blind vision need.

const tokens = readTokens(new URL("../app/globals.css", import.meta.url));
const marks = [
  "act-now",
  "watch",
  "fine",
  "note",
  "series-1",
  "series-2",
  "series-3",
  "series-4",
  "field-edge",
  "focus",
];
const texts = ["ink", "ink-soft", "link"];
const statuses = ["act-now", "watch", "fine", "note"];
const series = ["series-1", "series-2", "series-3", "series-4"];

function colour(scheme: Scheme, name: string): Triple {
  return fromHex(hexOf(scheme, name));
}

function hexOf(scheme: Scheme, name: string): string {
  const hex = tokens[scheme].get(name);
  if (hex === undefined) throw new Error(`no token --${name} with a light and a dark value in app/globals.css`);
  return hex;
}

describe.each(schemes)("%s", (scheme) => {
  const onBoth = (name: string) =>
    Math.min(...["sheet", "bench"].map((ground) => contrast(colour(scheme, name), colour(scheme, ground))));

  // WCAG 2.2, 1.4.11 (marks and controls, 3:1) and 1.4.3 (text, 4.5:1).
  test.each(marks)("mark %s stands out from sheet and bench", (name) => {
    expect(onBoth(name)).toBeGreaterThanOrEqual(3);
  });

  test.each(texts)("text in %s can be read on sheet and bench", (name) => {
    expect(onBoth(name)).toBeGreaterThanOrEqual(4.5);
  });

  test.each([
    ["on-enamel", "enamel"],
    ["on-strip", "strip"],
  ])("text in %s can be read on %s", (text, ground) => {
    expect(contrast(colour(scheme, text), colour(scheme, ground))).toBeGreaterThanOrEqual(4.5);
  });

  test.each(statuses)("a word beside the shape of %s stands at 9:1 on its tint", (name) => {
    const tint = mix(colour(scheme, name), colour(scheme, "sheet"), 0.14);
    expect(contrast(colour(scheme, "ink"), tint)).toBeGreaterThanOrEqual(9);
    expect(contrast(colour(scheme, name), tint)).toBeGreaterThanOrEqual(3);
  });

  test("the focus ring is seen on both grounds, and the strip's own ring on the strip", () => {
    expect(onBoth("focus")).toBeGreaterThanOrEqual(4.5);
    expect(contrast(colour(scheme, "on-strip"), colour(scheme, "strip"))).toBeGreaterThanOrEqual(3);
  });
});

// Values reached when the palette was chosen, rounded down to one decimal; a token change may not fall below them.
const floors: readonly [Scheme, Vision, series: number, statuses: number][] = [
  ["light", "normal", 35.8, 20.8],
  ["light", "protan", 28.5, 20.8],
  ["light", "deutan", 24.6, 20.8],
  ["light", "tritan", 26.9, 20.8],
  ["dark", "normal", 35.6, 20],
  ["dark", "protan", 28.3, 20],
  ["dark", "deutan", 23.4, 20],
  ["dark", "tritan", 23.3, 20],
];

test.each(floors)(
  "%s, %s vision: no two series and no two statuses look alike",
  (scheme, vision, floor, statusFloor) => {
    const smallest = (names: readonly string[]) => {
      const seen = names.map((name) => labAsSeen(hexOf(scheme, name), vision));
      return Math.min(...seen.flatMap((one, i) => seen.slice(i + 1).map((other) => colourDifference(one, other))));
    };
    expect(smallest(series)).toBeGreaterThanOrEqual(floor);
    expect(smallest(statuses)).toBeGreaterThanOrEqual(statusFloor);
  },
);

test("every vision looked at has its floor", () => {
  expect(new Set(floors.map(([, vision]) => vision))).toEqual(new Set(Object.keys(visions)));
});

describe("the measures themselves", () => {
  // By definition: black on white is 21, a colour on itself 1. #767676 on white is the well-known grey just above 4.5.
  test("contrast", () => {
    expect(contrast(fromHex("#000000"), fromHex("#ffffff"))).toBeCloseTo(21, 9);
    expect(contrast(fromHex("#0e5a5e"), fromHex("#0e5a5e"))).toBe(1);
    expect(contrast(fromHex("#767676"), fromHex("#ffffff"))).toBeCloseTo(4.54, 2);
  });

  // Test data of Sharma, Wu and Dalal (2005), table 1, written down from memory: pairs that break wrong hue arithmetic.
  const published: readonly [Triple, Triple, number][] = [
    [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
    [[50, 3.1571, -77.2803], [50, 0, -82.7485], 2.8615],
    [[50, 2.8361, -74.02], [50, 0, -82.7485], 3.4412],
    [[50, -1.3802, -84.2814], [50, 0, -82.7485], 1],
    [[50, 0, 0], [50, -1, 2], 2.3669],
    [[50, 2.49, -0.001], [50, -2.49, 0.0009], 7.1792],
    [[50, 2.49, -0.001], [50, -2.49, 0.0011], 7.2195],
    [[50, -0.001, 2.49], [50, 0.0009, -2.49], 4.8045],
    [[50, 2.5, 0], [50, 0, -2.5], 4.3065],
    [[50, 2.5, 0], [73, 25, -18], 27.1492],
    [[50, 2.5, 0], [61, -5, 29], 22.8977],
    [[50, 2.5, 0], [56, -27, -3], 31.903],
    [[50, 2.5, 0], [58, 24, 15], 19.4535],
    [[60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
    [[22.7233, 20.0904, -46.694], [23.0331, 14.973, -42.5619], 2.0373],
    [[2.0776, 0.0795, -1.135], [0.9033, -0.0636, -0.5514], 0.9082],
  ];
  test.each(published)("difference of %j and %j", (one, other, difference) => {
    expect(colourDifference(one, other)).toBeCloseTo(difference, 4);
    expect(colourDifference(other, one)).toBeCloseTo(difference, 4);
  });
});
