import { expect, test } from "vitest";
import { expectedFailures, type FleetCourse, lifeByMonth } from "@/lib/forecast/fleet/fleet-course";
import { wearOfMonths } from "@/lib/forecast/fleet/type-seasons";
import { randomSource } from "../statistics/random-source";

const steady: FleetCourse = {
  running: Float64Array.from({ length: 11 }, (_, age) => (age === 10 ? 500 : 0)),
  coming: new Float64Array(0),
  leaving: 0,
  wear: [1, 1, 1],
};
const constant = lifeByMonth({ shape: 1, rate: 0.01 }, 60);

// By hand: 500 × (1 − e^−0.01) = 4.975 fail in a month, and of those 1 − e^−0.005 once more within it.
test("a fleet of constant hazard fails as its hazard says, less where machines leave, more where they come", () => {
  const byHand = 500 * -Math.expm1(-0.01) * (1 - Math.expm1(-0.005));
  for (const month of expectedFailures(steady, constant)) expect(month).toBeCloseTo(byHand, 5);
  const [, , left = 0] = expectedFailures({ ...steady, leaving: 0.5 }, constant);
  expect(left).toBeCloseTo(byHand / 4, 5);
  const [came = 0, , later = 0] = expectedFailures({ ...steady, coming: Float64Array.of(500) }, constant);
  expect(came).toBeCloseTo(byHand + 500 * -Math.expm1(-0.005), 5);
  expect(later / byHand).toBeGreaterThan(2.9);
  expect(expectedFailures({ ...steady, wear: [3] }, constant)[0]).toBeGreaterThan(2.9 * byHand);
  expect(() => expectedFailures(steady, lifeByMonth({ shape: 1, rate: 1 }, 5))).toThrow(/life/);
});

/** Machines followed one by one: each fails at ages drawn from its life, and begins anew. */
function followed(machines: number, { shape, scale }: { readonly shape: number; readonly scale: number }): number[] {
  const random = randomSource(12);
  const failures = new Array<number>(24).fill(0);
  for (let machine = 0; machine < machines; machine++) {
    const age = 20 + 40 * random.uniform();
    const gone = (age / scale) ** shape;
    for (let at = scale * (gone - Math.log(random.uniform())) ** (1 / shape) - age; at < 24; ) {
      failures[Math.floor(at)] = (failures[Math.floor(at)] ?? 0) + 1;
      at += scale * (-Math.log(random.uniform())) ** (1 / shape);
    }
  }
  return failures;
}

// By simulation with separate code; 120,000 machines, so that a half-year's failures have an error near 1 %.
test.each([
  { shape: 0.7, scale: 60 },
  { shape: 3, scale: 50 },
])("months of a fleet of shape $shape come out as machines followed one by one", ({ shape, scale }) => {
  const running = Float64Array.from({ length: 60 }, (_, age) => (age >= 20 ? 3000 : 0));
  const wear = new Array<number>(24).fill(1);
  const life = lifeByMonth({ shape, rate: scale ** -shape }, 120);
  const expected = expectedFailures({ running, coming: new Float64Array(0), leaving: 0, wear }, life);
  const seen = followed(120_000, { shape, scale });
  for (const from of [0, 6, 18]) {
    const halfYear = (months: readonly number[]) => months.slice(from, from + 6).reduce((sum, n) => sum + n, 0);
    expect(Math.abs(halfYear(expected) / halfYear(seen) - 1), `from month ${from}`).toBeLessThan(0.03);
  }
});

test("a season of machines is found where failures follow the year, and left alone where they do not", () => {
  const months = (wave: number) =>
    Array.from({ length: 60 }, (_, i) => ({
      month: 24_000 + i,
      failures: Math.round(20 * (1 + wave * Math.cos((2 * Math.PI * (i - 6)) / 12))),
      came: i === 0 ? 1000 : 0,
      left: 0,
    }));
  expect(wearOfMonths(months(0), 24_060)).toBeUndefined();
  const wear = wearOfMonths(months(0.5), 24_060) ?? [];
  expect(wear).toHaveLength(12);
  expect(Math.abs((wear[6] ?? 0) - 1.5)).toBeLessThan(0.1);
  expect(Math.abs((wear[0] ?? 0) - 0.5)).toBeLessThan(0.1);
});
