import { describe, expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { dayNumber } from "@/lib/calendar/day-number";
import { failureRates, type GroupRate } from "@/lib/failures/failure-rates";
import { ageBands, type RateQuestion } from "@/lib/failures/rate-question";
import { cellsOf, type MadeUnit, makeUnits, until } from "./made-units";

// Truth by separate code: units are walked one by one and day by day.

const units = makeUnits(400);
const made = cellsOf(units);
/** Both models of one type, so that each is what the other is held against. */
const cells = { ...made, models: made.models.map((model) => ({ ...model, productType: "dishwasher" as const })) };
const question: RateQuestion = { by: ["component"], counting: "calls", from: 900, until, where: {}, level: 0.95 };

interface Walked {
  readonly days: number;
  readonly events: number;
}

/** Days at risk and jobs of some units between two days, at ages from..to. */
function walk(
  of: (unit: MadeUnit) => boolean,
  isCounted: (failure: MadeUnit["failures"][number]) => boolean,
  [from, to]: readonly [number, number],
  ages: readonly [number, number] = [0, 1e9],
): Walked {
  let [days, events] = [0, 0];
  for (const unit of units.filter(of)) {
    const inAge = (on: number) => on - unit.inServiceOn >= ages[0] && on - unit.inServiceOn < ages[1];
    for (let on = Math.max(unit.observedFrom, from); on < Math.min(unit.retiredOn ?? to, to); on++)
      if (inAge(on)) days += 1;
    events += unit.failures.filter(
      (one) =>
        isCounted(one) &&
        inAge(one.on) &&
        one.on >= Math.max(unit.observedFrom, from) &&
        one.on < to &&
        (unit.retiredOn === undefined || one.on <= unit.retiredOn),
    ).length;
  }
  return { days, events };
}

function rateOf(groups: readonly GroupRate[], value: string): Extract<GroupRate, { kind: "rate" }> {
  const found = groups.find(({ key }) => key.map((part) => part.value).join("/") === value);
  if (found?.kind !== "rate") throw new Error(`no rate for ${value}`);
  return found;
}

test("by cause: every unit is at risk of every cause, and only jobs of that cause count", () => {
  const { groups } = failureRates(cells, { ...question, by: ["cause", "model"] });
  const outside = walk(
    ({ modelId }) => modelId === 1,
    ({ outside: is }) => is === true,
    [900, until],
  );
  const { estimate } = rateOf(groups, "foreign_object/A");
  expect(estimate).toMatchObject({ events: outside.events, n: outside.days / 365.25 });
  expect(rateOf(groups, "freeze/A").estimate.events).toBe(0);
  const failures = failureRates(cells, { ...question, counting: "failures", by: ["cause"] });
  expect(failures.groups.map(({ key }) => key[0]?.value)).toEqual(["component"]);
});

test("by year: days and jobs of that calendar year inside the period, and the years add up to the whole", () => {
  const { groups, fleet } = failureRates(cells, { ...question, by: ["year"] });
  expect(groups.map(({ key }) => key[0]?.value)).toEqual([
    ...["1972", "1973", "1974", "1975", "1976", "1977", "1978", "1979", "1980"],
  ]);
  for (const year of ["1972", "1975", "1980"]) {
    const start = Math.max(900, dayNumber(day(`${year}-01-01`)));
    const end = Math.min(until, dayNumber(day(`${Number(year) + 1}-01-01`)));
    const own = walk(
      () => true,
      () => true,
      [start, end],
    );
    expect(rateOf(groups, year).estimate).toMatchObject({ events: own.events, n: own.days / 365.25 });
  }
  const total = groups.reduce((sum, group) => sum + (group.kind === "rate" ? group.estimate.n : 0), 0);
  expect(fleet.kind === "rate" && fleet.estimate.n).toBeCloseTo(total, 9);
});

describe("against what its ages predict", () => {
  test("a model against the other one of its type, age by age", () => {
    const { groups } = failureRates(cells, { ...question, by: ["model", "component"] });
    const pumps = ({ component }: MadeUnit["failures"][number]) => component === "pump";
    let [observed, expected] = [0, 0];
    for (const { fromDay, untilDay } of ageBands) {
      const own = walk(({ modelId }) => modelId === 1, pumps, [900, until], [fromDay, untilDay]);
      const other = walk(({ modelId }) => modelId === 2, pumps, [900, until], [fromDay, untilDay]);
      if (other.days === 0) continue;
      observed += own.events;
      expected += (own.days * other.events) / other.days;
    }
    const { likeAges } = rateOf(groups, "A/pump");
    if (likeAges.kind !== "ratio") throw new Error(likeAges.kind);
    expect(likeAges.estimate.events).toBe(observed);
    expect(likeAges.estimate.n).toBeCloseTo(expected, 9);
    expect(likeAges.estimate.point).toBeCloseTo(observed / expected, 9);
  });

  test("machines of another type predict nothing, unless types are what is compared", () => {
    expect(rateOf(failureRates(made, { ...question, by: ["model"] }).groups, "A").likeAges.kind).toBe(
      "nothing-expected",
    );
    expect(rateOf(failureRates(made, { ...question, by: ["type"] }).groups, "dishwasher").likeAges.kind).toBe("ratio");
  });

  test("components alone have no machines beside them", () => {
    expect(rateOf(failureRates(cells, question).groups, "pump").likeAges.kind).toBe("nothing-beside-it");
  });
});
