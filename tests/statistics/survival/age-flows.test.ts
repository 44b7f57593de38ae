import { describe, expect, test } from "vitest";
import { ageFlows, atRiskByAge } from "@/lib/statistics/survival/age-flows";
import { kaplanMeier } from "@/lib/statistics/survival/kaplan-meier";
import type { LifeColumns, LifeRow } from "@/lib/statistics/survival/life-rows";
import { nelsonAalen } from "@/lib/statistics/survival/nelson-aalen";
import { numbersAtAges } from "@/lib/statistics/survival/numbers-at-ages";
import { riskTable } from "@/lib/statistics/survival/risk-table";
import { madeUpLives } from "./made-up-lives";
import { macs, rossi } from "./reference-lives";

const options = { confidence: 0.9, interval: "log-log" } as const;

function columns(rows: readonly LifeRow[]): LifeColumns {
  return {
    entry: Float64Array.from(rows, (row) => row.entry),
    exit: Float64Array.from(rows, (row) => row.exit),
    event: Uint8Array.from(rows, (row) => (row.event ? 1 : 0)),
    count: Float64Array.from(rows, (row) => row.count),
  };
}

/** Lives written out one by one: what the counts must be equal to. */
const spelledOut = (rows: readonly LifeRow[]): LifeRow[] =>
  rows.flatMap((row) => Array.from({ length: row.count }, () => ({ ...row, count: 1 })));

describe.each([
  ["made-up lives", () => madeUpLives(400)],
  ["macs", macs],
  ["rossi", rossi],
])("%s: every form of the input gives one answer", (_, rows) => {
  test("rows, single lives, columns, flows and risk table draw the same curve to the last digit", () => {
    const expected = kaplanMeier(rows(), options);
    const flows = ageFlows(rows());
    expect(kaplanMeier(spelledOut(rows()), options)).toEqual(expected);
    expect(kaplanMeier(columns(rows()), options)).toEqual(expected);
    expect(kaplanMeier(flows, options)).toEqual(expected);
    expect(kaplanMeier(riskTable(flows), options)).toEqual(expected);
    const hazard = { confidence: 0.9, interval: "log" } as const;
    expect(nelsonAalen(riskTable(columns(rows())), hazard)).toEqual(nelsonAalen(rows(), hazard));
  });

  // By definition: entry < age <= exit, or watched from the start.
  test("the number at risk is the definition applied to each row", () => {
    const flows = ageFlows(rows());
    const atRisk = atRiskByAge(flows);
    flows.ages.forEach((age, i) => {
      const expected = rows()
        .filter(({ entry, exit }) => (entry < age || entry === 0) && age <= exit)
        .reduce((sum, row) => sum + row.count, 0);
      expect(atRisk[i]).toBe(expected);
    });
  });

  test("numbers under the chart are the definition applied to each row", () => {
    const ages = [0, 0.3, 3, 10, 10.5, 25, 400];
    const total = (keep: (row: LifeRow) => boolean) =>
      rows()
        .filter((row) => keep(row) && !(row.entry === row.exit && row.entry > 0))
        .reduce((sum, row) => sum + row.count, 0);
    expect(numbersAtAges(rows(), ages)).toEqual(
      ages.map((age) => ({
        age,
        atRisk: total(({ entry, exit }) => (entry < age || entry === 0) && age <= exit),
        entered: total(({ entry }) => entry <= age),
        failed: total(({ exit, event }) => event && exit <= age),
        lost: total(({ exit, event }) => !event && exit <= age),
      })),
    );
  });
});

test("flows and tables counted elsewhere are checked: nobody leaves who had not entered", () => {
  const flow = (ages: number[], entered: number[], events: number[], lost: number[]) =>
    ageFlows({
      ages: Float64Array.from(ages),
      entered: Float64Array.from(entered),
      events: Float64Array.from(events),
      lost: Float64Array.from(lost),
    });
  expect(() => flow([0, 5], [1, 0], [0, 2], [0, 0])).toThrow("2 lives leave at ages[1], where only 1 are at risk");
  expect(() => flow([5, 5], [1, 0], [0, 1], [0, 0])).toThrow("ages[1] is 5");
  expect(() => flow([0, 5], [1], [0, 1], [0, 0])).toThrow("must have one length; they have 2, 1, 2 and 2");
  const table = { ages: Float64Array.of(3), atRisk: Float64Array.of(2), events: Float64Array.of(3), lastAge: 9 };
  expect(() => riskTable(table)).toThrow("events[0] must be a whole number between 1 and atRisk[0]; they are 3 and 2");
});
