import { expect, test } from "vitest";
import { describeMean } from "@/lib/format/format-mean";
import { formatProbability } from "@/lib/format/format-probability";

test.each([
  [0.212, 0.181, 0.248, "0.21 failures a unit (0.18 to 0.25)"],
  [0.0052, 0.0031, 0.0088, "0.005 failures a unit (0.003 to 0.009)"],
  [6.41, 4.9, 8.2, "6.4 failures a unit (4.9 to 8.2)"],
])("a mean of %d has the decimals that its range supports", (mean, low, high, words) => {
  expect(describeMean(mean, low, high)).toBe(words);
});

test("a probability never rounds to none", () => {
  expect(formatProbability(0.0423)).toBe("0.042");
  expect(formatProbability(0.001)).toBe("0.001");
  expect(formatProbability(0.0004)).toBe("under 0.001");
  expect(formatProbability(1)).toBe("1.000");
});
