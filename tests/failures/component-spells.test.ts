import { describe, expect, test } from "vitest";
import { componentFlows } from "@/lib/failures/component-flows";
import { componentSpells } from "@/lib/failures/component-spells";
import { unitHistories } from "@/lib/failures/unit-histories";
import type { LifeQuestion } from "@/lib/failures/visit-spells";
import { ageFlows } from "@/lib/statistics/survival/age-flows";
import type { LifeRow } from "@/lib/statistics/survival/life-rows";
import { cellsOf, type MadeUnit, makeUnits, until } from "./made-units";

// Truth by separate code: each unit's lives are cut one after the other from its own list of failures.

const question: LifeQuestion = { component: "board", from: undefined, until, where: {}, level: 0.95 };
const units = makeUnits(600);

function seen(unit: MadeUnit, component: string): number[] {
  return unit.failures
    .filter(
      ({ component: what, outside, on }) =>
        what === component && !outside && on >= unit.observedFrom && on < until && on <= (unit.retiredOn ?? until),
    )
    .map(({ on }) => on)
    .sort((a, b) => a - b);
}

function livesOf(unit: MadeUnit, component: string): LifeRow[] {
  const end = Math.min(unit.retiredOn ?? until, until);
  const cuts = seen(unit, component);
  const begins = [unit.inServiceOn, ...cuts];
  return begins.flatMap((begin, index) => {
    const failedOn = cuts[index];
    const stop = failedOn ?? end;
    if (stop < unit.observedFrom || (stop === begin && failedOn === undefined)) return [];
    const entry = unit.observedFrom > begin ? unit.observedFrom - begin - 0.5 : 0;
    return [{ entry, exit: stop - begin, event: failedOn !== undefined, count: 1 }];
  });
}

function merged(rows: readonly LifeRow[]): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const { entry, exit, event, count } of rows) {
    const key = `${entry}-${exit}-${event}`;
    counts[key] = (counts[key] ?? 0) + count;
  }
  return counts;
}

describe("lives of a component from counts", () => {
  test.each(["pump", "board"] as const)("%s: equal to lives cut unit by unit", (component) => {
    const own = units.filter((unit) => component === "board" || unit.modelId === 1);
    const truth = merged(own.flatMap((unit) => livesOf(unit, component)));
    expect(merged(componentSpells(cellsOf(units), { ...question, component }))).toEqual(truth);
    expect(Object.values(truth).some((count) => count > 0)).toBe(true);
  });

  test("a part that failed and was replaced begins again at age 0", () => {
    const [unit] = units;
    if (unit === undefined) throw new Error("no unit was made");
    const one: MadeUnit = {
      ...unit,
      modelId: 1,
      inServiceOn: 1000,
      observedFrom: 1000,
      retiredOn: 2000,
      failures: [
        { on: 1300, component: "pump" },
        { on: 1350, component: "pump" },
      ],
    };
    const lives = componentSpells(cellsOf([one]), { ...question, component: "pump" });
    expect(merged(lives)).toEqual({ "0-300-true": 1, "0-50-true": 1, "0-650-false": 1 });
  });

  test("a unit that is retired on the day of its failure leaves no further life", () => {
    const one: MadeUnit = {
      unitId: "u",
      modelId: 1,
      inServiceOn: 0,
      observedFrom: 0,
      retiredOn: 230,
      failures: [{ on: 230, component: "pump" }],
    };
    const lives = componentSpells(cellsOf([one]), { ...question, component: "pump" });
    expect(merged(lives)).toEqual({ "0-230-true": 1 });
  });
});

describe("histories of units from counts", () => {
  test("events and watched time equal those of single units", () => {
    const histories = unitHistories(cellsOf(units), question);
    const total = (of: (history: (typeof histories)[number]) => number) =>
      histories.reduce((sum, item) => sum + item.count * of(item), 0);
    const watched = units.filter((unit) => Math.min(unit.retiredOn ?? until, until) >= unit.observedFrom);
    expect(total(() => 1)).toBe(watched.length);
    expect(total((history) => history.events.length)).toBe(
      watched.reduce((sum, unit) => sum + seen(unit, "board").length, 0),
    );
    expect(total((history) => history.events.length ** 2)).toBe(
      watched.reduce((sum, unit) => sum + seen(unit, "board").length ** 2, 0),
    );
    expect(total((history) => history.exit)).toBe(
      watched.reduce((sum, unit) => sum + Math.min(unit.retiredOn ?? until, until) - unit.inServiceOn, 0),
    );
  });
});

test.each([undefined, 1500])("flows are the lives counted by age, also from day %s", (from) => {
  const asked = { ...question, from };
  expect(componentFlows(cellsOf(units), asked)).toEqual(ageFlows(componentSpells(cellsOf(units), asked)));
});

// Beyond the twenty years that the arrays hold to begin with.
test("a unit of sixty years is counted at its age", () => {
  const old: MadeUnit = {
    unitId: "u",
    modelId: 1,
    inServiceOn: 0,
    observedFrom: 0,
    retiredOn: undefined,
    failures: [],
  };
  const { ages, lost } = componentFlows(cellsOf([old]), { ...question, until: 22_000 });
  expect([...ages]).toEqual([0, 22_000]);
  expect([...lost]).toEqual([0, 1]);
});

describe("a period that begins after records do", () => {
  const one: MadeUnit = {
    unitId: "u",
    modelId: 1,
    inServiceOn: 0,
    observedFrom: 100,
    retiredOn: undefined,
    failures: [
      { on: 400, component: "pump" },
      { on: 1500, component: "pump" },
    ],
  };
  const from = 1000;

  // By hand: the first pump was replaced on day 400, so the one that enters the period half a day before day 1000 is
  // 599.5 days old; it fails at 1100, and its successor is still running at the cut-off.
  test("a part replaced before it enters at its own age, and its failure then is no event", () => {
    const lives = componentSpells(cellsOf([one]), { ...question, component: "pump", from });
    expect(merged(lives)).toEqual({ "599.5-1100-true": 1, "0-2500-false": 1 });
  });

  test("a part that failed before it and never again is one unfailed life", () => {
    const lives = componentSpells(cellsOf([{ ...one, failures: one.failures.slice(0, 1) }]), {
      ...question,
      component: "pump",
      from,
    });
    expect(merged(lives)).toEqual({ "599.5-3600-false": 1 });
  });
});
