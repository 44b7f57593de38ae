import { expect, test } from "vitest";
import { compareRecurrence } from "@/lib/statistics/recurrence/compare-recurrence";
import { meanCumulativeFunction } from "@/lib/statistics/recurrence/mean-cumulative-function";
import { recurrenceDifference } from "@/lib/statistics/recurrence/recurrence-difference";
import type { UnitHistory } from "@/lib/statistics/recurrence/unit-history";
import { expectClose } from "../../reference/read-reference";
import { seededUniforms } from "../survival/made-up-lives";
import { brakingGrids, valveSeats } from "./reference-histories";

/** The weighted difference and its robust variance, unit by unit and age by age. */
function zByDefinition(first: readonly UnitHistory[], second: readonly UnitHistory[]): number {
  const groups = [first, second];
  const watched = (unit: UnitHistory, age: number) => (unit.entry < age || unit.entry === 0) && age <= unit.exit;
  const sizeAt = (unit: UnitHistory, age: number) =>
    unit.events.filter((event) => event.age === age).reduce((sum, event) => sum + event.size, 0);
  const ages = [...new Set([...first, ...second].flatMap((unit) => unit.events.map((event) => event.age)))];
  const atRisk = (group: readonly UnitHistory[], age: number) => group.filter((unit) => watched(unit, age)).length;
  const both = ages.filter((age) => groups.every((group) => atRisk(group, age) > 0));
  const weight = (age: number) =>
    (atRisk(first, age) * atRisk(second, age)) / (atRisk(first, age) + atRisk(second, age));
  const mean = (group: readonly UnitHistory[], age: number) =>
    group.reduce((sum, unit) => sum + sizeAt(unit, age), 0) / atRisk(group, age);
  const difference = both.reduce((sum, age) => sum + weight(age) * (mean(first, age) - mean(second, age)), 0);
  const variance = groups.reduce(
    (total, group) =>
      total +
      group.reduce((sum, unit) => {
        const residual = both
          .filter((age) => watched(unit, age))
          .reduce((part, age) => part + (weight(age) / atRisk(group, age)) * (sizeAt(unit, age) - mean(group, age)), 0);
        return sum + residual ** 2;
      }, 0),
    0,
  );
  return difference / Math.sqrt(variance);
}

// By definition.
test("two batches of braking grids: the running form is the definition", () => {
  const result = compareRecurrence(brakingGrids(1), brakingGrids(2));
  if (result.kind !== "compared") throw new Error(result.kind);
  expectClose(result.z, zByDefinition(brakingGrids(1), brakingGrids(2)), 1e-10);
  const back = compareRecurrence(brakingGrids(2), brakingGrids(1));
  if (back.kind !== "compared") throw new Error(back.kind);
  expectClose(back.z, -result.z, 1e-12);
  expectClose(back.probability, result.probability, 1e-12);
});

test("with late entry too", () => {
  const late = valveSeats().map((unit, i) => {
    const entry = i % 3 === 0 ? 90 : 0;
    return { ...unit, entry, events: unit.events.filter((event) => event.age > entry) };
  });
  const result = compareRecurrence(late.slice(0, 20), late.slice(20));
  if (result.kind !== "compared") throw new Error(result.kind);
  expectClose(result.z, zByDefinition(late.slice(0, 20), late.slice(20)), 1e-10);
});

// Recovery: two groups drawn from one process with lemons in it; a 5 % test must cry wolf about one time in twenty.
test("between alike groups, units that differ do not make differences", () => {
  const next = seededUniforms(11);
  const unit = (): UnitHistory => {
    const rate = next() < 0.2 ? 4 : 0.5;
    const exit = 0.5 + next();
    const events: { age: number; size: number }[] = [];
    const wait = () => -Math.log(1 - next()) / rate;
    for (let age = wait(); age <= exit; age += wait()) events.push({ age, size: 1 });
    return { entry: 0, exit, count: 1, events };
  };
  const group = () => Array.from({ length: 40 }, unit);
  let found = 0;
  for (let trial = 0; trial < 500; trial++) {
    const result = compareRecurrence(group(), group());
    if (result.kind === "compared" && result.probability < 0.05) found++;
  }
  expect(found / 500).toBeGreaterThan(0.02);
  expect(found / 500).toBeLessThan(0.09);
});

test("differences at chosen ages: means apart, errors squared together, and named ends", () => {
  const [first, second] = [brakingGrids(1), brakingGrids(2)];
  const ages = [0, 200, 350, 5000];
  const differences = recurrenceDifference(first, second, { ages, confidence: 0.95, variance: "robust" });
  const at = (group: UnitHistory[], age: number) => {
    const curve = meanCumulativeFunction(group, { confidence: 0.95, variance: "robust", interval: "plain" });
    const step = curve.kind === "curve" ? curve.steps.findLast((one) => one.age <= age) : undefined;
    if (step?.limits.kind !== "limits") throw new Error("no limits");
    return { mean: step.mean, error: step.limits.standardError };
  };
  expect(differences[0]).toEqual({ kind: "no-limits", age: 0, difference: 0 });
  expect(differences[3]).toEqual({ kind: "beyond-data", age: 5000 });
  for (const [i, age] of [200, 350].entries()) {
    const found = differences[i + 1];
    if (found?.kind !== "difference") throw new Error("expected a difference");
    const [one, two] = [at(first, age), at(second, age)];
    expectClose(found.difference, one.mean - two.mean, 1e-12);
    expectClose(found.high - found.low, 2 * 1.959963984540054 * Math.hypot(one.error, two.error), 1e-12);
  }
});

test("groups without a common age with events cannot be compared", () => {
  const quiet: UnitHistory[] = [{ entry: 0, exit: 10, count: 9, events: [] }];
  expect(compareRecurrence(quiet, quiet)).toEqual({ kind: "not-comparable" });
});
