import { expect, test } from "vitest";
import { demoBands } from "../bench/forecast-demo";

// Recovery of a known truth, a small sample of what `npm run bench -- forecast-demo` tries on fifty companies.
test("about nine in ten months of an invented company lie in the 90 % bands of forecasts from lives", () => {
  const held = demoBands([2], 0.05);
  expect(held.months).toBeGreaterThan(100);
  expect(held.central90).toBeGreaterThan(0.84);
  expect(held.central90).toBeLessThan(0.97);
});
