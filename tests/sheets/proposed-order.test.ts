import { expect, test } from "vitest";
import { compareOrders } from "../bench/sheet";

// A small sample of `npm run bench -- sheet`, which prints the figures of six thousand walks: 26.7 to 21.8 minutes.
test("on the invented company the proposed order comes to the right one sooner, and no less often", () => {
  const { fixed, proposed } = compareOrders({ seed: 1, size: 0.1, most: 60 });
  const mean = ({ minutes, walked }: typeof fixed) => minutes / walked;
  console.log(
    `minutes to the right one: ${mean(fixed).toFixed(1)} in the sheet's order, ${mean(proposed).toFixed(1)} as proposed`,
  );
  expect(fixed.walked).toBeGreaterThan(30);
  expect(mean(proposed)).toBeLessThan(mean(fixed));
  expect(proposed.found).toBeGreaterThanOrEqual(fixed.found - 1);
});
