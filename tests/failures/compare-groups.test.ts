import { describe, expect, test } from "vitest";
import { compareGroups, type GroupComparison } from "@/lib/failures/compare-groups";
import { comparisonVerdict } from "@/lib/failures/comparison-verdict";
import { ageBandOf } from "@/lib/failures/rate-question";
import { restOfFleet } from "@/lib/failures/rest-of-fleet";
import type { LifeQuestion } from "@/lib/failures/visit-spells";
import { cellsOf, type MadeUnit, makeUnits, until } from "./made-units";

// Truth by separate code: each unit's days are walked one by one and dropped into the band of that day's age.

const units = makeUnits(500);
const cells = cellsOf(units);
const question: LifeQuestion = { component: "board", from: undefined, until, where: {}, level: 0.95 };
const of = (model: "A" | "B") => ({ name: model, cells, question: { ...question, where: { model } } });

interface Walked {
  readonly days: Map<string, number>;
  readonly events: Map<string, number>;
}

function walk(chosen: readonly MadeUnit[], from = Number.NEGATIVE_INFINITY, to = until): Walked {
  const days = new Map<string, number>();
  const events = new Map<string, number>();
  const grow = (counts: Map<string, number>, key: string) => counts.set(key, (counts.get(key) ?? 0) + 1);
  for (const unit of chosen) {
    const end = Math.min(unit.retiredOn ?? until, to);
    for (let day = Math.max(unit.observedFrom, from); day < end; day++)
      grow(days, ageBandOf(day - unit.inServiceOn).key);
    for (const { on, component, outside } of unit.failures) {
      const seen = on >= Math.max(unit.observedFrom, from) && on < to && on <= (unit.retiredOn ?? until);
      if (component === "board" && !outside && seen) grow(events, ageBandOf(on - unit.inServiceOn).key);
    }
  }
  return { days, events };
}

function total(counts: Map<string, number>): number {
  return [...counts.values()].reduce((sum, count) => sum + count, 0);
}

function expectedOf(first: Walked, second: Walked): number {
  return [...first.days].reduce((sum, [band, days]) => {
    const reference = second.days.get(band);
    return sum + (reference === undefined ? 0 : ((second.events.get(band) ?? 0) / reference) * days);
  }, 0);
}

function matches(comparison: GroupComparison, first: Walked, second: Walked) {
  const { crude, observedExpected, likeAges } = comparison;
  if (crude.kind !== "estimate" || observedExpected.kind !== "estimate" || likeAges.kind !== "estimate")
    throw new Error("both groups have failures at the same ages");
  expect(crude.estimate.events).toBe(total(first.events));
  const rate = (walked: Walked) => total(walked.events) / total(walked.days);
  expect(crude.estimate.point).toBeCloseTo(rate(first) / rate(second), 9);
  expect(observedExpected.estimate.n).toBeCloseTo(expectedOf(first, second), 6);
  expect(likeAges.estimate.n).toBeCloseTo(expectedOf(first, second), 6);
  // The exact ratio knows the doubt of both groups, observed over expected that of the first alone.
  expect(likeAges.estimate.hi / likeAges.estimate.lo).toBeGreaterThan(
    observedExpected.estimate.hi / observedExpected.estimate.lo,
  );
}

describe("two models", () => {
  const comparison = compareGroups(of("A"), of("B"));

  test("rates, ratio and expected failures equal those of units walked day by day", () => {
    matches(
      comparison,
      walk(units.filter(({ modelId }) => modelId === 1)),
      walk(units.filter(({ modelId }) => modelId === 2)),
    );
  });

  test("the other way round the ratios turn over", () => {
    const turned = compareGroups(of("B"), of("A"));
    if (turned.likeAges.kind !== "estimate" || comparison.likeAges.kind !== "estimate") throw new Error("no ratio");
    expect(turned.likeAges.estimate.point).toBeCloseTo(1 / comparison.likeAges.estimate.point, 6);
    expect(turned.likeAges.estimate.lo).toBeCloseTo(1 / comparison.likeAges.estimate.hi, 6);
    expect(turned.likeAges.pValue).toBeCloseTo(comparison.likeAges.pValue, 9);
  });

  test("the rest of the fleet is the fleet without the group", () => {
    const rest = compareGroups(of("A"), { name: "rest", cells: restOfFleet(cells, { model: "A" }), question });
    expect(rest.second.rate).toEqual(comparison.second.rate);
    expect(rest.observedExpected).toEqual(comparison.observedExpected);
  });

  test("units drawn alike show no clear difference", () => {
    expect(comparisonVerdict(comparison).verdict).not.toMatch(/^clearly/);
  });
});

test("before and after a day: the two sides share units and no day", () => {
  const day = 2600;
  const after = { name: "after", cells, question: { ...question, from: day } };
  const before = { name: "before", cells, question: { ...question, until: day } };
  const comparison = compareGroups(after, before);
  matches(comparison, walk(units, day), walk(units, undefined, day));
  const seen = walk(units);
  const { first, second } = comparison;
  if (first.rate.kind !== "rate" || second.rate.kind !== "rate") throw new Error("both sides were watched");
  expect(first.rate.estimate.events + second.rate.estimate.events).toBe(total(seen.events));
  expect(365.25 * (first.rate.estimate.n + second.rate.estimate.n)).toBeCloseTo(total(seen.days), 4);
});

describe("verdicts", () => {
  /** 300 units watched from new for 1000 days each, of which some fail on day 500. */
  const batch = (modelId: 1 | 2, failing: number): MadeUnit[] =>
    Array.from({ length: 300 }, (_, index) => ({
      unitId: `${modelId}-${index}`,
      modelId,
      inServiceOn: 0,
      observedFrom: 0,
      retiredOn: 1000,
      failures: index < failing ? [{ on: 500, component: "board" as const }] : [],
    }));
  const verdictOf = (first: number, second: number) => {
    const own = cellsOf([...batch(1, first), ...batch(2, second)]);
    return comparisonVerdict(compareGroups({ ...of("A"), cells: own }, { ...of("B"), cells: own }));
  };

  test.each([
    [60, 20, "clearly above"],
    [20, 60, "clearly below"],
    [45, 26, "probably above"],
    [30, 28, "no sign of a difference"],
    [1, 2, "too few to judge"],
    [0, 0, "too few to judge"],
  ])("%i against %i failures of 300: %s", (first, second, verdict) => {
    expect(verdictOf(first, second).verdict).toBe(verdict);
  });

  test("failures that fall on few units must also stand up unit by unit", () => {
    const again = batch(1, 3).map((unit) => ({
      ...unit,
      failures: unit.failures.flatMap(({ component }) =>
        Array.from({ length: 15 }, (_, i) => ({ on: 100 + 50 * i, component })),
      ),
    }));
    const own = cellsOf([...again, ...batch(2, 20)]);
    const found = comparisonVerdict(compareGroups({ ...of("A"), cells: own }, { ...of("B"), cells: own }));
    expect(found.byUnit).toBe(true);
    expect(found.verdict).toBe("no sign of a difference");
  });
});
