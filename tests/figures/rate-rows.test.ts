import { describe, expect, test } from "vitest";
import { positionOn, rateAxis } from "@/lib/figures/rate-axis";
import { type RateComparison, type RateGroup, type RateRows, rateRows } from "@/lib/figures/rate-rows";
import { rateEstimate } from "@/lib/statistics/rate-estimate";
import { shareEstimate } from "@/lib/statistics/share-estimate";

const rate = (events: number, unitYears: number) =>
  rateEstimate({ events, unitYears, level: 0.95, method: "poisson-exact" });
const group = (label: string, events: number, unitYears: number): RateGroup => ({
  key: label,
  label,
  estimate: rate(events, unitYears),
});

function drawn(comparison: RateComparison): RateRows {
  if (comparison.kind !== "rows") throw new Error(`expected rows, got ${comparison.kind}`);
  return comparison;
}

const groups = [group("Pump", 31, 412), group("Board", 12, 388), group("Lock", 3, 20), group("Sensor", 4, 6)];

describe("order", () => {
  test("by the lowest believable rate puts 31 in 412 before 3 in 20, although the latter's point is higher", () => {
    const { rows } = drawn(rateRows(groups, { order: "lowest-believable" }));
    expect(rows.map((row) => row.label)).toEqual(["Pump", "Lock", "Board"]);
    const points = rows.map((row) => row.estimate.point);
    expect(Math.max(...points)).toBe(points[1]);
  });

  test("by name or as given keeps its promise", () => {
    expect(drawn(rateRows(groups, { order: "name" })).rows.map((row) => row.label)).toEqual(["Board", "Lock", "Pump"]);
    expect(drawn(rateRows(groups, { order: "given" })).rows.map((row) => row.label)).toEqual(["Pump", "Board", "Lock"]);
  });

  test("never ranks a thin group and never loses one", () => {
    for (const order of ["name", "lowest-believable", "given"] as const) {
      const { rows, tooFew } = drawn(rateRows(groups, { order }));
      expect(tooFew.map((row) => row.label)).toEqual(["Sensor"]);
      expect(rows.length + tooFew.length).toBe(groups.length);
    }
  });
});

test("without groups there is a named answer, not an empty drawing", () => {
  expect(rateRows([], { order: "name" })).toEqual({ kind: "no-groups" });
});

test("a row is read out with name, number, range and count", () => {
  const { rows } = drawn(rateRows([group("Pump", 31, 412)], { order: "name" }));
  expect(rows[0]?.spoken).toBe("Pump: 8 in 100 a year (5 to 11), 31 failures in 412 unit-years");
});

describe("axis", () => {
  test("starts at 0, has even ticks and holds every firm interval whole", () => {
    const estimates = groups.map(({ estimate }) => estimate);
    const axis = rateAxis(estimates, { steps: 5 });
    expect(axis.ticks[0]).toEqual({ at: 0, label: "0" });
    expect(axis.ticks.at(-1)?.at).toBe(1);
    const firm = [rate(31, 412), rate(12, 388)];
    expect(firm.every(({ hi }) => hi <= axis.max)).toBe(true);
    expect(estimates.slice(0, 3).every(({ point }) => point <= axis.max)).toBe(true);
    expect(axis.ticks.length).toBeLessThanOrEqual(7);
  });

  test("is not stretched by one loose interval that dwarfs the others", () => {
    const firm = [rate(310, 4120), rate(120, 3880)];
    const axis = rateAxis([...firm, rate(1, 10)], { steps: 5 });
    expect(rate(1, 10).hi).toBeGreaterThan(axis.max);
    expect(axis.max).toBeLessThan(0.2);
  });

  test("of shares ends at 100 in 100", () => {
    const all = shareEstimate({ events: 40, trials: 40, level: 0.95, method: "wilson" });
    expect(rateAxis([all])).toMatchObject({ max: 1, frame: 100, unit: "in 100" });
  });

  test("says 1,000 where every rate is below 1 in 100", () => {
    expect(rateAxis([rate(40, 8000), rate(20, 9000)])).toMatchObject({ frame: 1000, unit: "in 1,000 a year" });
    expect(rateAxis([rate(40, 8000), rate(31, 412)]).frame).toBe(100);
  });

  test("keeps positions between its ends", () => {
    const axis = rateAxis([rate(31, 412)]);
    expect(positionOn(axis, 0)).toBe(0);
    expect(positionOn(axis, axis.max / 2)).toBe(0.5);
    expect(positionOn(axis, 10 * axis.max)).toBe(1);
  });

  // Each tick's label is its position times the axis: labels and drawing cannot drift apart.
  test.each([3, 17, 40, 96, 350])("labels agree with positions at %i failures in 412", (events) => {
    const axis = rateAxis([rate(events, 412)], { steps: 5 });
    for (const { at, label } of axis.ticks) {
      expect(Number(label.replaceAll(",", ""))).toBeCloseTo(at * axis.max * axis.frame, 6);
    }
  });

  test("of nothing is the caller's mistake", () => {
    expect(() => rateAxis([])).toThrow("estimates: an axis needs at least one estimate");
  });
});
