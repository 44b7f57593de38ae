import { expect, test } from "vitest";
import { normalCdf, normalDensity, normalQuantile } from "@/lib/statistics/normal";
import { expectClose } from "@/tests/reference/read-reference";
import { namedValues } from "@/tests/reference/read-table";

// R 4.2.2, tests/reference/distributions.R.
test("the normal distribution agrees with R, down to 1e-300", () => {
  for (const { a, value } of namedValues("distributions-from-r.csv", "pnorm")) expectClose(normalCdf(a), value, 1e-14);
});

// By hand, to 30 digits: erfc(7/√2)/2 = 1.27981254388583500438362369078e-12 and erfc(5/√2)/2.
test("far tails keep all their digits", () => {
  expectClose(normalCdf(-7), 1.279812543885835e-12, 1e-15);
  expectClose(normalCdf(-5), 2.866515718791939e-7, 1e-15);
});

test.each([1e-300, 1e-100, 1e-16, 1e-10, 0.001, 0.2, 0.5, 0.7])(
  "the quantile of %d leads back to it",
  (probability) => {
    const z = normalQuantile(probability);
    // A probability moves by z times the relative change of z, so the last digits of z cost that many more.
    expectClose(normalCdf(z), probability, 1e-15 * Math.max(1, z * z));
  },
);

test("the ends are the ends", () => {
  expect(normalCdf(Number.NEGATIVE_INFINITY)).toBe(0);
  expect(normalCdf(Number.POSITIVE_INFINITY)).toBe(1);
  expect(normalCdf(0)).toBe(0.5);
  expect(normalDensity(0)).toBeCloseTo(1 / Math.sqrt(2 * Math.PI), 15);
  expect(() => normalCdf(Number.NaN)).toThrow(RangeError);
});
