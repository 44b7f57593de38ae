import { expect, test } from "vitest";
import { seasonIndex } from "@/lib/forecast/season-index";
import { testedSeason } from "@/lib/forecast/tested-season";
import { randomSource } from "../statistics/random-source";

const even = new Array<number>(12).fill(1);
const wave = (month: number) => 1 + 0.4 * Math.cos((2 * Math.PI * (month - 6)) / 12);
const asked = { exposure: even, dispersion: 1, level: 0.05 };

// By definition of a test: where there is no season, it is found as often as the level says (400 tries: error 0.011).
test("without a season one is found in about five of a hundred", () => {
  const random = randomSource(4);
  let found = 0;
  for (let i = 0; i < 400; i++) {
    if (testedSeason({ ...asked, events: even.map(() => random.poisson(8)) }).kind === "season") found += 1;
  }
  expect(found / 400).toBeGreaterThan(0.02);
  expect(found / 400).toBeLessThan(0.09);
});

test("a known summer is found and its height recovered, also where months were lived unevenly", () => {
  const random = randomSource(5);
  const exposure = even.map((_, month) => 1 + month / 11);
  const events = exposure.map((time, month) => random.poisson(300 * time * wave(month)));
  const season = testedSeason({ ...asked, exposure, events });
  if (season.kind !== "season") throw new Error(season.kind);
  expect(Math.abs((season.factors[6] ?? 0) - 1.4)).toBeLessThan(0.12);
  expect(Math.abs((season.factors[0] ?? 0) - 0.6)).toBeLessThan(0.12);
});

test("few events, lists that are no year and bunches are named", () => {
  expect(testedSeason({ ...asked, events: even })).toEqual({ kind: "too-few", events: 12, needed: 40 });
  const bunched = { ...asked, dispersion: 5, events: even.map((_, m) => 5 * m) };
  expect(testedSeason({ ...bunched, dispersion: 1 }).kind).toBe("season");
  expect(testedSeason({ ...bunched, events: even.map((_, m) => 18 + m) }).kind).toBe("no-season");
  expect(() => testedSeason({ ...asked, events: [1] })).toThrow(/twelve/);
});

// A history has a season only where the test finds one: chance alone gives none nine times in ten.
test("a history without a season has no index, one with a summer has", () => {
  const random = randomSource(6);
  const histories = Array.from({ length: 60 }, () => Array.from({ length: 48 }, () => random.poisson(4)));
  expect(histories.filter((history) => seasonIndex(history) !== undefined).length).toBeLessThan(10);
  const summery = Array.from({ length: 48 }, (_, month) => random.poisson(6 * wave(month % 12)));
  const index = seasonIndex(summery);
  const of = (months: readonly number[]) => months.reduce((sum, month) => sum + (index?.[month] ?? 0), 0);
  expect(of([5, 6, 7]) / of([11, 0, 1])).toBeGreaterThan(1.2);
});
