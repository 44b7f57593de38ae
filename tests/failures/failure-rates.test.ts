import { describe, expect, test } from "vitest";
import { failureRates, type GroupRate } from "@/lib/failures/failure-rates";
import type { RateQuestion } from "@/lib/failures/rate-question";
import { cellsOf, type MadeUnit, makeUnits, until } from "./made-units";

// Truth by separate code: units are walked one by one and day by day, and every number that failureRates gives from
// the counts is compared with the walk.

/** Counts one unit at a time, one day at a time. */
function walk(
  units: readonly MadeUnit[],
  modelIds: readonly number[],
  component: string,
  ages: readonly [number, number],
) {
  let unitDays = 0;
  let events = 0;
  let squares = 0;
  for (const unit of units) {
    if (!modelIds.includes(unit.modelId)) continue;
    const end = Math.min(unit.retiredOn ?? until, until);
    for (let day = unit.observedFrom; day < end; day++) {
      const age = day - unit.inServiceOn;
      if (age >= ages[0] && age < ages[1]) unitDays++;
    }
    const own = unit.failures.filter(({ on, component: what, outside }) => {
      const age = on - unit.inServiceOn;
      const inWindow = on >= unit.observedFrom && on < until && (unit.retiredOn === undefined || on <= unit.retiredOn);
      return inWindow && what === component && !outside && age >= ages[0] && age < ages[1];
    }).length;
    events += own;
    squares += own * own;
  }
  return { unitDays, events, squares };
}

const question: RateQuestion = {
  by: ["component"],
  counting: "failures",
  from: undefined,
  until,
  where: {},
  level: 0.95,
};
const units = makeUnits(800);
const cells = cellsOf(units);

function rateOf(groups: readonly GroupRate[], value: string): Extract<GroupRate, { kind: "rate" }> {
  const found = groups.find((group) => group.key.map((part) => part.value).join("/") === value);
  if (found?.kind !== "rate") throw new Error(`no rate for ${value}`);
  return found;
}

describe("rates from counts equal a walk over single units and days", () => {
  test("by component: a refrigerator is no pump's exposure", () => {
    const { groups } = failureRates(cells, question);
    const pump = walk(units, [1], "pump", [0, 1e9]);
    const board = walk(units, [1, 2], "board", [0, 1e9]);
    expect(rateOf(groups, "pump").estimate).toMatchObject({ events: pump.events, n: pump.unitDays / 365.25 });
    expect(rateOf(groups, "board").estimate).toMatchObject({ events: board.events, n: board.unitDays / 365.25 });
  });

  test("by component and age band, every band", () => {
    const { groups } = failureRates(cells, { ...question, by: ["component", "age"] });
    const edges = {
      "0-12": [0, 366],
      "12-24": [366, 731],
      "24-36": [731, 1096],
      "36-60": [1096, 1827],
      "60-96": [1827, 2922],
    } as const;
    for (const [band, ages] of Object.entries(edges)) {
      const truth = walk(units, [1, 2], "board", ages);
      const { estimate } = rateOf(groups, `board/${band}`);
      expect(estimate.events, band).toBe(truth.events);
      expect(estimate.n, band).toBeCloseTo(truth.unitDays / 365.25, 9);
    }
  });

  test("a period in calendar days cuts both events and exposure", () => {
    const halves = [undefined, 2400].map((from) =>
      failureRates(cells, { ...question, from, until: from === undefined ? 2400 : until }),
    );
    const [early, late] = halves.map(({ groups }) => rateOf(groups, "board").estimate);
    const all = rateOf(failureRates(cells, question).groups, "board").estimate;
    expect((early?.n ?? 0) + (late?.n ?? 0)).toBeCloseTo(all.n, 9);
    // A failure on the very day of retirement belongs to the half that holds that day.
    expect((early?.events ?? 0) + (late?.events ?? 0)).toBe(all.events);
  });

  test("units failing twice widen the limits only where failures bunch", () => {
    const rate = rateOf(failureRates(cells, question).groups, "pump");
    const { events, squares } = walk(units, [1], "pump", [0, 1e9]);
    expect(squares).toBeGreaterThan(events);
    expect(rate.dispersion).toBeGreaterThan(0);
    const bunched = cellsOf(
      units.map((unit, index) =>
        index % 20 === 0
          ? {
              ...unit,
              failures: [
                ...unit.failures,
                ...Array.from({ length: 6 }, (_, i) => ({ on: unit.observedFrom + i, component: "board" as const })),
              ],
            }
          : unit,
      ),
    );
    const wide = rateOf(failureRates(bunched, question).groups, "board");
    expect(wide.dispersion).toBeGreaterThan(1);
    expect(wide.estimate.method).toBe("poisson-robust");
  });
});

describe("what can't be counted is said, not dropped", () => {
  test("jobs before records and after retirement, and jobs of units without exposure, are counted by reason", () => {
    const first = cells.jobs[0];
    if (first === undefined) throw new Error("the generator made no job");
    const lost = failureRates(
      { ...cells, jobs: [...cells.jobs, { ...first, cause: "component", countedAs: "failure", place: undefined }] },
      question,
    ).leftOut;
    expect(lost.find(({ reason }) => reason === "unit carries no exposure")?.jobs).toBe(1);
    expect(lost.find(({ reason }) => reason === "before records begin")?.jobs).toBeGreaterThan(0);
    expect(lost.find(({ reason }) => reason === "after the unit was retired")?.jobs).toBeGreaterThan(0);
  });

  test("a failure of a component that the product type does not have is left out: it has no exposure to be divided by", () => {
    const strange = cells.jobs.filter(
      (job) => job.modelId === 2 && job.component === "pump" && job.countedAs === "failure",
    );
    expect(strange.length).toBeGreaterThan(0);
    const { groups, leftOut } = failureRates({ ...cells, models: cells.models.slice(1) }, question);
    expect(groups.map((group) => group.key[0]?.value)).toEqual(["board"]);
    expect(leftOut.find(({ reason }) => reason.startsWith("component or symptom"))?.jobs).toBeGreaterThan(0);
  });

  test("an outside cause is a call and no failure", () => {
    const calls = failureRates(cells, { ...question, counting: "calls" }).fleet;
    const failures = failureRates(cells, question).fleet;
    const outside = failureRates(cells, { ...question, counting: "foreign_object" }).fleet;
    const events = (group: GroupRate) => (group.kind === "rate" ? group.estimate.events : Number.NaN);
    expect(events(calls)).toBe(events(failures) + events(outside));
    expect(events(outside)).toBeGreaterThan(0);
  });

  test("no unit at all: no rate, and no number is made up", () => {
    const { groups, fleet } = failureRates({ ...cells, windows: [], jobs: [], repeated: [] }, question);
    expect(groups).toEqual([]);
    expect(fleet).toEqual({ kind: "no-exposure", key: [], events: 0 });
  });
});

describe("by payer", () => {
  const payers = ["customer", "maker", "contract"] as const;
  const paid = {
    ...cells,
    jobs: cells.jobs.map((cell, i) => ({ ...cell, payer: payers[i % 3] ?? "customer" })),
    repeated: cells.repeated.map((job, i) => ({ ...job, payer: payers[i % 3] ?? "customer" })),
  };

  // Whoever pays, all units are at risk: what payers had adds up to the whole, over the same unit-years each.
  test("each payer's failures add up to those of all, each over the whole exposure", () => {
    const { groups, fleet } = failureRates(paid, { ...question, by: ["payer"] });
    if (fleet.kind !== "rate") throw new Error("the fleet has exposure");
    const counted = payers.map((payer) => rateOf(groups, payer).estimate);
    expect(counted.reduce((sum, { events }) => sum + events, 0)).toBe(fleet.estimate.events);
    for (const { n } of counted) expect(n).toBeCloseTo(fleet.estimate.n, 9);
    expect(rateOf(groups, "goodwill").estimate.events).toBe(0);
  });

  test("cells without it are the caller's mistake", () => {
    expect(() => failureRates(cells, { ...question, by: ["payer"] })).toThrow("payer");
  });
});
