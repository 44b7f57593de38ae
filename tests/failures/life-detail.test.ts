import { describe, expect, test } from "vitest";
import { componentSpells } from "@/lib/failures/component-spells";
import { lifeDetail } from "@/lib/failures/life-detail";
import { missingAnswer } from "@/lib/failures/missing-answer";
import { ageBandOf, ageBands, daysPerYear } from "@/lib/failures/rate-question";
import type { LifeQuestion } from "@/lib/failures/visit-spells";
import { cellsOf, makeUnits, until } from "./made-units";

const units = makeUnits(600);
const cells = cellsOf(units);
const question: LifeQuestion = { component: "board", from: undefined, until, where: {}, level: 0.95 };
const life = lifeDetail(cells, question);

describe("age bands", () => {
  // By separate code: every life is laid over every band.
  const spells = componentSpells(cells, question);

  test.each(life.hazards.map((hazard) => [hazard.band.name, hazard] as const))(
    "%s: failures and years",
    (_, hazard) => {
      const { fromDay, untilDay } = hazard.band;
      const failed = spells.filter(({ event, exit }) => event && ageBandOf(exit).key === hazard.band.key);
      expect(hazard.failed).toBe(failed.reduce((sum, { count }) => sum + count, 0));
      const last = Math.min(untilDay, Math.max(...spells.map(({ exit }) => exit)) + 1);
      const days = spells.reduce(
        (sum, { entry, exit, count }) => sum + count * Math.max(0, Math.min(exit, last) - Math.max(entry, fromDay)),
        0,
      );
      expect(hazard.years).toBeCloseTo(days / daysPerYear, 9);
      expect(hazard.estimate?.point).toBeCloseTo(hazard.failed / hazard.years, 9);
    },
  );

  test("hold every failure and all the time lived", () => {
    expect(life.hazards.reduce((sum, { failed }) => sum + failed, 0)).toBe(life.failures);
    expect(life.hazards.reduce((sum, { years }) => sum + years, 0)).toBeCloseTo(life.years, 6);
    expect(life.hazards.length).toBeGreaterThan(4);
    expect(life.hazards.length).toBeLessThanOrEqual(ageBands.length);
  });
});

describe("the fitted life", () => {
  const { model } = life;
  if (model.kind === "refused") throw new Error(model.reason);

  test("its tenth, its line and its chances are one distribution", () => {
    const { shape, scale } = model.weibull;
    const failed = (age: number) => 1 - Math.exp(-((age / scale.value) ** shape.value));
    expect(failed(model.tenth.age)).toBeCloseTo(0.1, 9);
    for (const point of model.line) expect(point.failed).toBeCloseTo(failed(point.age), 9);
    for (const chance of model.chances) {
      expect(chance.failed).toBeCloseTo(failed(chance.years * daysPerYear), 9);
      expect(chance.low).toBeLessThan(chance.failed);
      expect(chance.high).toBeGreaterThan(chance.failed);
    }
  });

  test("ends at the oldest age watched, and says which chances lie beyond it", () => {
    expect(model.line.at(-1)?.age).toBe(model.lastAge);
    expect(model.chances.map(({ years, beyondData }) => beyondData === years * daysPerYear > model.lastAge)).toEqual(
      model.chances.map(() => true),
    );
  });

  test("the exponential, a Weibull of shape 1, never has the greater likelihood", () => {
    const aic = Object.fromEntries(
      model.checks.map((check) => [check.family, check.kind === "fitted" ? check.aic : 0]),
    );
    expect((aic.exponential ?? 0) - 2).toBeGreaterThanOrEqual((aic.weibull ?? 0) - 4 - 1e-9);
    expect(Math.min(...model.checks.map((check) => (check.kind === "fitted" ? check.behind : 0)))).toBe(0);
  });

  test("is refused under five failures, with the count", () => {
    const few = cellsOf(units.filter(({ failures }) => failures.length === 0).slice(0, 50));
    expect(lifeDetail(few, question).model).toMatchObject({ kind: "refused", reason: "no-events" });
  });
});

describe("questions without an answer name what is missing", () => {
  const asked = (more: Partial<LifeQuestion>, of = cells) => missingAnswer(of, { ...question, ...more });

  test("an answer that exists is none of them", () => {
    expect(asked({})).toBeUndefined();
  });
  test("no unit of the kind", () => {
    expect(asked({ component: "pump", where: { model: "B" } })).toEqual({ kind: "no-such-units" });
    expect(asked({ where: { maker: "Three" } })).toEqual({ kind: "no-such-units" });
  });
  test("no in-service days: how many units lack them", () => {
    const unplaced = [{ modelId: 1, reason: "no_in_service_day" as const, units: 7 }];
    expect(asked({}, { ...cells, windows: [], unplaced })).toEqual({
      kind: "no-exposure",
      units: [{ reason: "no_in_service_day", units: 7 }],
    });
  });
  test("a period that ends before records begin", () => {
    const first = Math.min(...units.map(({ observedFrom }) => observedFrom));
    expect(asked({ until: first })).toEqual({ kind: "before-records", firstWatchedOn: first });
    expect(asked({ until: first + 1 })?.kind).not.toBe("before-records");
  });
  test("a period in which nothing was watched", () => {
    const gone = cellsOf(units.filter(({ retiredOn }) => retiredOn !== undefined && retiredOn < 3000));
    expect(asked({ from: 3500 }, gone)?.kind).toBe("outside-period");
  });
  test("a period that ends before the first failure", () => {
    const failedOn = units.flatMap(({ failures }) =>
      failures.filter(({ component, outside }) => component === "board" && !outside).map(({ on }) => on),
    );
    const first = Math.min(...failedOn);
    const late = cellsOf(units.map((unit) => ({ ...unit, observedFrom: unit.inServiceOn })));
    expect(asked({ until: first }, late)).toEqual({ kind: "before-first-failure", firstFailedOn: first });
    expect(asked({ until: first + 1 }, late)).toBeUndefined();
  });
});
