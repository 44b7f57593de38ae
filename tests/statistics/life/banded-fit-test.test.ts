import { describe, expect, test } from "vitest";
import { bandedFitTest } from "@/lib/statistics/life/banded-fit-test";
import { fitWeibull } from "@/lib/statistics/life/fit-weibull";
import type { LifeRow } from "@/lib/statistics/survival/life-rows";
import { minimalStandard } from "../../minimal-standard";

/** Lives with late entry and right censoring, as a register has them; those that ended before they entered are unseen. */
function lives(count: number, next: () => number, age: (next: () => number) => number): LifeRow[] {
  return Array.from({ length: count }, () => {
    const entry = next() < 0.4 ? 400 * next() : 0;
    const lost = entry + 1200 * next();
    const failed = age(next);
    return { entry, exit: Math.min(failed, lost), event: failed <= lost, count: 1 };
  }).filter(({ entry, exit }) => exit > entry);
}

const weibull = (next: () => number) => 1500 * (-Math.log(next())) ** (1 / 1.8);
/** One part in four fails young, the others wear out: no Weibull. */
const mixed = (next: () => number) => (next() < 0.25 ? 60 * -Math.log(next()) : 1500 * (-Math.log(next())) ** (1 / 5));

function probability(rows: readonly LifeRow[]): number {
  const fit = fitWeibull(rows, { confidence: 0.95, minimumEvents: 5 });
  if (fit.kind === "refused") throw new Error(fit.reason);
  const found = bandedFitTest(fit, rows, { fewest: 5 });
  if (found.kind !== "tested") throw new Error(found.kind);
  return found.probability;
}

test("lives drawn from a Weibull are doubted about as often as the level says", () => {
  const next = minimalStandard(20260412);
  const drawn = Array.from({ length: 400 }, () => probability(lives(250, next, weibull)));
  const doubted = (level: number) => drawn.filter((p) => p < level).length / drawn.length;
  // 400 draws: two standard errors are 0.022 at 5 % and 0.04 at 20 %.
  expect(doubted(0.05)).toBeGreaterThan(0.028);
  expect(doubted(0.05)).toBeLessThan(0.072);
  expect(doubted(0.2)).toBeGreaterThan(0.16);
  expect(doubted(0.2)).toBeLessThan(0.24);
});

test("a mixture of early and late failures is doubted nearly always", () => {
  const next = minimalStandard(77);
  const drawn = Array.from({ length: 40 }, () => probability(lives(250, next, mixed)));
  expect(drawn.filter((p) => p < 0.05).length).toBeGreaterThanOrEqual(38);
});

describe("bands", () => {
  const rows = lives(300, minimalStandard(5), weibull);
  const fit = fitWeibull(rows, { confidence: 0.95, minimumEvents: 5 });
  if (fit.kind === "refused") throw new Error(fit.reason);
  const found = bandedFitTest(fit, rows, { fewest: 5 });
  if (found.kind !== "tested") throw new Error(found.kind);

  test("hold all failures, observed and expected", () => {
    const { bands } = found;
    const sum = (of: (band: (typeof bands)[number]) => number) => bands.reduce((all, one) => all + of(one), 0);
    expect(sum((band) => band.observed)).toBe(fit.events);
    expect(sum((band) => band.expected)).toBeCloseTo(fit.events, 6);
    expect(found.degreesOfFreedom).toBe(bands.length - 1);
  });

  test("do not depend on the unit of age", () => {
    const years = rows.map((row) => ({ ...row, entry: row.entry / 365.25, exit: row.exit / 365.25 }));
    expect(probability(years)).toBeCloseTo(found.probability, 6);
  });
});

test("under fifteen failures nothing can be told", () => {
  const rows: LifeRow[] = [100, 200, 300, 500, 800, 900].map((exit) => ({ entry: 0, exit, event: true, count: 1 }));
  const fit = fitWeibull([...rows, { entry: 0, exit: 1000, event: false, count: 20 }], {
    confidence: 0.95,
    minimumEvents: 5,
  });
  if (fit.kind === "refused") throw new Error(fit.reason);
  expect(bandedFitTest(fit, rows, { fewest: 5 })).toEqual({ kind: "too-few-events", events: 6 });
});
