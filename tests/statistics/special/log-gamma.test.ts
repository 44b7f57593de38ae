import { expect, test } from "vitest";
import { logGamma, logGammaOnePlus } from "@/lib/statistics/log-gamma";
import { digamma } from "@/lib/statistics/special/digamma";
import { expectClose } from "@/tests/reference/read-reference";
import { namedValues } from "@/tests/reference/read-table";

// By definition: Γ(n + 1) = n!.
test("log Γ of a whole number is the log of a factorial", () => {
  let factorial = 1;
  for (let n = 1; n <= 20; n++) {
    factorial *= n;
    expectClose(logGamma(n + 1), Math.log(factorial), 1e-14);
  }
});

// By definition: Γ(½) = √π, and the recurrence Γ(x + 1) = x Γ(x).
test("log Γ meets its recurrence across every seam of the computation", () => {
  expectClose(logGamma(0.5), 0.5 * Math.log(Math.PI), 1e-14);
  for (const x of [0.2, 0.499, 0.501, 1.4, 1.6, 2.4, 2.6, 14.2, 400]) {
    expect(Math.abs(logGamma(x + 1) - logGamma(x) - Math.log(x))).toBeLessThan(1e-14 * Math.max(1, logGamma(x + 1)));
  }
});

// tests/reference/tails.tsv: mpmath, 45 digits, also beside the zeros at 1 and 2 (where R 4.2.2 has eleven digits).
test("log Γ is right to 1e-14, beside its zeros too", () => {
  for (const { a, value } of namedValues("tails.tsv", "lgamma")) expectClose(logGamma(a), value, 1e-14);
});

// R 4.2.2, tests/reference/distributions.R.
test("the derivative of log Γ agrees with R", () => {
  for (const { a, value } of namedValues("distributions-from-r.csv", "digamma")) expectClose(digamma(a), value, 1e-12);
});

// To first order log Γ(1 + z) = −γ z, with Euler's γ = 0.5772156649015329.
test.each([1e-300, 1e-20, -1e-12])("log Γ(1 + %d) keeps its digits", (z) => {
  expectClose(logGammaOnePlus(z), -0.5772156649015329 * z, 1e-11);
});

test.each([0, -1, Number.POSITIVE_INFINITY, Number.NaN])("log Γ(%d) throws", (x) => {
  expect(() => logGamma(x)).toThrow(/x must be/);
});
