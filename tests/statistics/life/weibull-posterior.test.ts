import { expect, test } from "vitest";
import { seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { fitWeibull } from "@/lib/statistics/life/fit-weibull";
import { AgeTally } from "@/lib/statistics/life/lived-ages";
import { weibullPosterior } from "@/lib/statistics/life/weibull-posterior";
import type { LifeRow } from "@/lib/statistics/survival/life-rows";
import { randomSource } from "../random-source";

/** Lives of Weibull shape and scale, cut off at ages spread evenly up to the oldest. */
function someLives(lives: number, { shape, scale }: { readonly shape: number; readonly scale: number }): LifeRow[] {
  const random = randomSource(4);
  return Array.from({ length: lives }, () => {
    const life = scale * (-Math.log(random.uniform())) ** (1 / shape);
    const seenTo = 120 * random.uniform();
    return { entry: 0, exit: Math.min(life, seenTo), event: life < seenTo, count: 1 };
  });
}

function tallied(rows: readonly LifeRow[]) {
  const tally = new AgeTally();
  for (const { entry, exit, event, count } of rows) tally.add(entry, exit, event, count);
  return tally.counts();
}

const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const varianceOf = (values: readonly number[]) => meanOf(values.map((value) => (value - meanOf(values)) ** 2));

// By definition with separate code: each life is walked through band by band.
test("failures and time lived stand in the bands of age in which they were", () => {
  const rows = someLives(200, { shape: 1.5, scale: 80 }).map((row) => ({ ...row, entry: row.exit / 3 }));
  const { failed, lived } = tallied(rows);
  for (const band of [0, 7, 40, 119]) {
    const inBand = rows.map(({ entry, exit }) => Math.max(0, Math.min(exit, band + 1) - Math.max(entry, band)));
    expect(lived[band] ?? 0).toBeCloseTo(
      inBand.reduce((sum, time) => sum + time, 0),
      9,
    );
    expect(failed[band] ?? 0).toBe(rows.filter(({ exit, event }) => event && Math.floor(exit) === band).length);
  }
  const tally = new AgeTally();
  tally.add(3, 90, true, 2);
  tally.add(3, 90, true, -2);
  expect(tally.counts().failed).toHaveLength(0);
  expect(() => tally.add(-1, 2, false, 1)).toThrow(/entry/);
});

// By definition: sums know no order. Ages in half days, bands of a mean month.
test("lives told in another order give the same bytes", () => {
  const lives = Array.from({ length: 500 }, (_, at) => ({
    entry: (at * 7919) % 300,
    exit: 301 + ((at * 104729) % 4000),
  }));
  const of = (told: typeof lives) => {
    const tally = new AgeTally(60.875);
    for (const { entry, exit } of told) tally.add(entry, exit, exit % 3 === 0, 1 + (exit % 5));
    return tally.counts();
  };
  expect(of(lives.toReversed())).toEqual(of(lives));
  const months = new AgeTally();
  for (const { entry, exit } of lives) months.add(entry / 60.875, exit / 60.875, exit % 3 === 0, 1 + (exit % 5));
  for (const [band, time] of months.counts().lived.entries()) expect(of(lives).lived[band]).toBeCloseTo(time, 9);
});

// By definition: where all time was lived in the first band, the hazard of that band is the gamma of failures + 1/2 over it.
test("the rate is the gamma of half a failure more over the time lived", () => {
  const draws = seededDraws(2);
  const { draw } = weibullPosterior({ failed: Float64Array.of(4), lived: Float64Array.of(500) });
  const rates = Array.from({ length: 6000 }, () => draw(draws).rate);
  expect(Math.abs(meanOf(rates) / (4.5 / 500) - 1)).toBeLessThan(0.02);
  expect(Math.abs(varianceOf(rates) / (4.5 / 500 ** 2) - 1)).toBeLessThan(0.08);
});

// With many failures the posterior is normal around the likelihood's peak with its errors.
test("many failures give the lives that maximum likelihood gives, with its doubt", () => {
  const rows = someLives(6000, { shape: 2, scale: 100 });
  const fit = fitWeibull(rows, { confidence: 0.9, minimumEvents: 5 });
  if (fit.kind === "refused") throw new Error(fit.reason);
  const draws = seededDraws(8);
  const posterior = weibullPosterior(tallied(rows));
  const lives = Array.from({ length: 3000 }, () => posterior.draw(draws));
  const logShapes = lives.map(({ shape }) => Math.log(shape));
  expect(posterior.failures).toBe(fit.events);
  expect(Math.abs(Math.exp(meanOf(logShapes)) / fit.shape.value - 1)).toBeLessThan(0.005);
  expect(Math.abs(Math.sqrt(varianceOf(logShapes)) / Math.sqrt(fit.core.covariance.ss) - 1)).toBeLessThan(0.08);
  const byFive = meanOf(lives.map(({ shape, rate }) => rate * 60 ** shape));
  expect(Math.abs(byFive / (60 / fit.scale.value) ** fit.shape.value - 1)).toBeLessThan(0.01);
});

test("failures of another cause are not the life's, and no time lived is the caller's mistake", () => {
  const ages = { failed: Float64Array.of(10, 10), lived: Float64Array.of(100, 100) };
  const meanRate = (less: number) => {
    const draws = seededDraws(1);
    return meanOf(
      Array.from({ length: 2000 }, () => weibullPosterior(ages, less).draw(draws)).map(
        ({ rate, shape }) => rate * 2 ** shape,
      ),
    );
  };
  expect(meanRate(10) / meanRate(0)).toBeCloseTo(10.5 / 20.5, 1);
  expect(() => weibullPosterior({ failed: Float64Array.of(1), lived: Float64Array.of(0) })).toThrow(/lived/);
});
