import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { loadExposureCells } from "@/db/queries/exposure-cells";
import { loadFile } from "@/db/writes/load-file";
import { addDays, day } from "@/lib/calendar/day";
import { dayNumber } from "@/lib/calendar/day-number";
import { productTypeKeys } from "@/lib/domain/product-type";
import type { ExposureCells } from "@/lib/failures/cells";
import { compareGroups } from "@/lib/failures/compare-groups";
import { componentFlows } from "@/lib/failures/component-flows";
import { componentSpells } from "@/lib/failures/component-spells";
import { failureRates } from "@/lib/failures/failure-rates";
import { restOfFleet } from "@/lib/failures/rest-of-fleet";
import { unitHistories } from "@/lib/failures/unit-histories";
import type { LifeQuestion } from "@/lib/failures/visit-spells";
import { unitSums } from "@/lib/statistics/intervals/robust-rate";
import { repeatableRateEstimate } from "@/lib/statistics/rate-estimate";
import { observedExpectedEstimate } from "@/lib/statistics/ratio-estimate";
import { compareRecurrence } from "@/lib/statistics/recurrence/compare-recurrence";
import { recurrenceDifference } from "@/lib/statistics/recurrence/recurrence-difference";
import { compareCurves } from "@/lib/statistics/survival/compare-curves";
import { scenarioOf } from "@/synthetic-data/scenario";
import { writeDemo } from "@/synthetic-data/write-demo";
import { curvesOf, firstDifference, fitsOf, recurrenceOf } from "../failures/estimates-of";
import { startAfresh } from "./intake-files";
import { type RawCompany, type RawQuestion, rawCompany, rawFleet, rawHistory, rawLives } from "./raw-lives";
import { rawExpected, rawRate } from "./raw-rates";

// The demo company goes in through the intake. Every estimator is then given the counts of the database, and the
// lives cut unit by unit from the rows of units and jobs: both must give the same numbers.

const last = day("2026-10-31");
/** A part of the company is always taken; `npm run soak -- counts` takes all of it. */
const size = Number(process.env.DEMO_SIZE ?? 0.4);
const folder = mkdtempSync(join(tmpdir(), "ohmsworth-demo-"));
const cutOffs = [day("2022-03-15"), day("2024-08-01"), addDays(last, 1)].map(dayNumber);
const whole = cutOffs[2] ?? Number.NaN;
let company: RawCompany;
let cells: ExposureCells;

beforeAll(async () => {
  await startAfresh();
  await writeDemo(scenarioOf({ seed: 1, size, until: last }), folder);
  for (const name of ["shop.json", "units.csv", "jobs.csv"]) {
    const result = await loadFile({ path: join(folder, name), fileName: name, mode: "add and set aside", today: last });
    expect(result.kind).toBe("added");
  }
  [company, cells] = await readOnly(async (db) => [await rawCompany(db), await loadExposureCells(db, {})] as const);
}, 300_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const failed = () => [...new Set(company.units.flatMap(({ failures }) => failures.map(({ component }) => component)))];

function lifeQuestion({ where, from, ...raw }: RawQuestion): LifeQuestion {
  const { type, ...others } = where;
  return {
    ...raw,
    from,
    level: 0.95,
    where: { ...others, productType: productTypeKeys.find((key) => key === type) },
  };
}

/** Fails with the estimator, the number and the question unless counts and rows agree: sums to 1e-11, fits to 1e-9. */
function expectSame(question: RawQuestion): number {
  const fleet = rawFleet(company, question);
  const rows = fleet.flatMap((unit) => rawLives(unit, question));
  const flows = componentFlows(cells, lifeQuestion(question));
  const say = JSON.stringify(question);
  expect(firstDifference(curvesOf(flows), curvesOf(rows), 1e-11), say).toBeUndefined();
  expect(firstDifference(fitsOf(flows), fitsOf(rows), 1e-9), say).toBeUndefined();
  const histories = unitHistories(cells, lifeQuestion(question));
  const alone = fleet.flatMap((unit) => rawHistory(unit, question));
  expect(firstDifference(recurrenceOf(histories), recurrenceOf(alone), 1e-10), say).toBeUndefined();
  return rows.filter(({ event }) => event).length;
}

describe("every estimator of every component gives the same from counts as from rows", () => {
  test.each(cutOffs.map((until, index) => [["early", "in the middle", "at the end"][index] ?? "", until] as const))(
    "with the cut-off %s",
    (_, until) => {
      // Every component at the end; before it every third, which the filters below do too.
      const asked = failed().filter((_, index) => until === whole || index % 3 === 2);
      const events = asked.map((component) => expectSame({ component, until, where: {} }));
      expect(events.length).toBeGreaterThan(until === whole ? 50 : 15);
      expect(events.reduce((sum, count) => sum + count, 0)).toBeGreaterThan(until === whole ? 500 : 100);
    },
  );

  test.each<[string, number, (component: string) => RawQuestion]>([
    ["one maker", 0, (component) => ({ component, until: whole, where: { maker: mostFailing(component, "maker") } })],
    ["one model", 1, (component) => ({ component, until: whole, where: { model: mostFailing(component, "model") } })],
    ["one type", 2, (component) => ({ component, until: whole, where: { type: mostFailing(component, "type") } })],
    ["one symptom", 0, (component) => ({ component, until: whole, where: { symptom: symptomOf(component) } })],
    [
      "a period of two years",
      1,
      (component) => ({
        component,
        from: dayNumber(day("2023-01-10")),
        until: dayNumber(day("2025-01-10")),
        where: {},
      }),
    ],
  ])("narrowed to %s", (_, start, ask) => {
    // Every third component, from another start for each filter: together they meet all of them, in a third of the time.
    const asked = failed().filter((_, index) => index % 3 === start);
    const events = asked.map((component) => expectSame(ask(component)));
    expect(events.reduce((sum, count) => sum + count, 0)).toBeGreaterThan(60);
  });
});

test("rows by kind of life are the flows", () => {
  for (const component of failed()) {
    const question = lifeQuestion({ component, until: whole, where: {} });
    expect(
      firstDifference(curvesOf(componentFlows(cells, question)), curvesOf(componentSpells(cells, question)), 1e-12),
    ).toBeUndefined();
  }
});

test("two makers compared: curves and repeat failures", () => {
  const makers = [...new Set(company.units.map(({ maker }) => maker))].slice(0, 2);
  for (const component of failed()) {
    const questions = makers.map((maker): RawQuestion => ({ component, until: whole, where: { maker } }));
    const [one, two] = questions.map((question) => ({
      flows: componentFlows(cells, lifeQuestion(question)),
      rows: rawFleet(company, question).flatMap((unit) => rawLives(unit, question)),
      counted: unitHistories(cells, lifeQuestion(question)),
      alone: rawFleet(company, question).flatMap((unit) => rawHistory(unit, question)),
    }));
    if (one === undefined || two === undefined) throw new Error("the demo has two makers");
    const weights = { weights: "log-rank" } as const;
    expect(
      firstDifference(compareCurves(one.flows, two.flows, weights), compareCurves(one.rows, two.rows, weights), 1e-11),
      component,
    ).toBeUndefined();
    expect(
      firstDifference(compareRecurrence(one.counted, two.counted), compareRecurrence(one.alone, two.alone), 1e-9),
      component,
    ).toBeUndefined();
    const at = { ages: [400, 1000, 2000], confidence: 0.95, variance: "robust" } as const;
    expect(
      firstDifference(
        recurrenceDifference(one.counted, two.counted, at),
        recurrenceDifference(one.alone, two.alone, at),
        1e-9,
      ),
      component,
    ).toBeUndefined();
  }
});

test.each(cutOffs)("rates with exact and by-unit limits, by component, with the cut-off on day %i", (until) => {
  const { groups } = failureRates(cells, {
    by: ["component"],
    counting: "failures",
    from: undefined,
    until,
    where: {},
    level: 0.95,
  });
  for (const component of failed()) {
    const question: RawQuestion = { component, until, where: {} };
    const alone = rawFleet(company, question).flatMap((unit) => rawRate(unit, question)?.whole ?? []);
    const group = groups.find(({ key }) => key[0]?.value === component);
    if (group?.kind !== "rate") throw new Error(`no rate of ${component}`);
    const estimate = repeatableRateEstimate({ ...unitSums(alone), level: 0.95 });
    expect(firstDifference(group.estimate, estimate, 1e-11), component).toBeUndefined();
    expect(group.units).toBe(alone.length);
  }
});

test("failures of one maker against what the ages of the others predict", () => {
  const maker = company.units[0]?.maker ?? "";
  for (const component of failed().slice(0, 20)) {
    const question: RawQuestion = { component, until: whole, where: {} };
    const counted = compareGroups(
      { name: maker, cells, question: lifeQuestion({ ...question, where: { maker } }) },
      { name: "others", cells: restOfFleet(cells, { maker }), question: lifeQuestion(question) },
    );
    const fleet = rawFleet(company, question);
    const alone = rawExpected(
      fleet.filter((unit) => unit.maker === maker),
      fleet.filter((unit) => unit.maker !== maker),
      question,
    );
    const found =
      alone.expected > 0
        ? { kind: "estimate", estimate: observedExpectedEstimate({ ...alone, level: 0.95 }) }
        : { kind: "nothing-expected" };
    expect(firstDifference(counted.observedExpected, found, 1e-10), component).toBeUndefined();
  }
});

/** The maker, model or type with most failures of the component, so that there is something to estimate. */
function mostFailing(component: string, part: "maker" | "model" | "type"): string {
  const counts = new Map<string, number>();
  for (const unit of company.units) {
    const own = unit.failures.filter((failure) => failure.component === component).length;
    counts.set(unit[part], (counts.get(unit[part]) ?? 0) + own);
  }
  return [...counts].toSorted(([, a], [, b]) => b - a)[0]?.[0] ?? "";
}

function symptomOf(component: string): string {
  const own = company.units.flatMap(({ failures }) => failures.filter((failure) => failure.component === component));
  return own.find(({ symptom }) => symptom !== undefined)?.symptom ?? "";
}
