import { beforeAll, describe, expect, test } from "vitest";
import { poissonRate } from "@/lib/statistics/intervals/poisson-rate";
import { type ExpectedFailures, expectedFailures } from "@/synthetic-data/expected-failures";
import type { PlantedDefect } from "@/synthetic-data/planted-defects";
import { type DemoReading, exposedUnits, observedFailures, writeAndRead } from "./demo-reading";

// The true rates come back from the files: failures counted from the rows against the integrated hazard of truth.json over
// the exposure that the register shows. No fitting, no look at what the generator kept in memory.

interface Cell {
  readonly name: string;
  readonly expected: number;
  readonly observed: number;
}

describe.each([
  { seed: 1, size: 1 },
  { seed: 2, size: 0.6 },
])("seed $seed at size $size", ({ seed, size }) => {
  let demo: DemoReading;
  let byModel: readonly Cell[];
  let byType: readonly Cell[];

  beforeAll(async () => {
    demo = await writeAndRead({ seed, size });
    const units = exposedUnits(demo);
    const observed = observedFailures(demo, units);
    const expected = expectedFailures(demo.truth, units);
    const countOf = ({ model, component }: ExpectedFailures) => observed.get(`${model} ${component}`) ?? 0;
    byModel = expected.map((cell) => ({
      name: `${cell.model} ${cell.component}`,
      expected: cell.expected,
      observed: countOf(cell),
    }));
    byType = summed(
      expected.map((cell) => ({
        name: `${cell.productType} ${cell.component}`,
        expected: cell.expected,
        observed: countOf(cell),
      })),
    );
  }, 60_000);

  // Counts of renewals scatter at most about as Poisson counts do; 95 % limits (Garwood) then hold in 95 % of cells or more.
  test("95 % limits of observed failures hold the true expectation in 90 to 100 % of component and kind", () => {
    expect(byType.length).toBeGreaterThan(70);
    expect(shareHeld(byType)).toBeGreaterThanOrEqual(0.9);
  });

  test("and in 93 to 99.5 % of component and model", () => {
    expect(byModel.length).toBeGreaterThan(180);
    expect(shareHeld(byModel)).toBeGreaterThanOrEqual(0.93);
    expect(shareHeld(byModel)).toBeLessThanOrEqual(0.995);
  });

  test("all failures together come within 3 standard errors", () => {
    const expected = byModel.reduce((sum, cell) => sum + cell.expected, 0);
    const observed = byModel.reduce((sum, cell) => sum + cell.observed, 0);
    expect(observed).toBeGreaterThan(8000 * size);
    expect(Math.abs(observed - expected)).toBeLessThan(3 * Math.sqrt(expected));
  });

  // Standardised differences have mean square 1 under Poisson scatter; renewals with wear scatter a little less.
  test("cells scatter around their expectation as counts do", () => {
    const large = byModel.filter(({ expected }) => expected >= 5);
    const square =
      large.reduce((sum, { expected, observed }) => sum + (observed - expected) ** 2 / expected, 0) / large.length;
    expect(square).toBeGreaterThan(0.7);
    expect(square).toBeLessThan(1.3);
  });

  test("in the weeks of each planted defect failures fit the multiplied hazard and exceed the plain one", () => {
    for (const defect of demo.truth.plantedDefects) {
      const units = exposedUnits(demo).filter(
        ({ model, serial }) => model === defect.modelNumber && isMadeWithin(serial, defect),
      );
      const observed = observedFailures(demo, units).get(`${defect.modelNumber} ${defect.component}`) ?? 0;
      const plain = expectedOf(expectedFailures({ ...demo.truth, plantedDefects: [] }, units), defect);
      const multiplied = expectedOf(expectedFailures(demo.truth, units), defect);
      expect(limits(observed).low).toBeGreaterThan(plain);
      expect(limits(observed).low).toBeLessThan(multiplied);
      expect(limits(observed).high).toBeGreaterThan(multiplied);
    }
  });

  test("the cell named as chance alone is surprising, and nothing was planted in it", () => {
    const { chanceOnly, plantedDefects } = demo.truth;
    expect(chanceOnly).toBeDefined();
    expect(chanceOnly?.observed).toBeGreaterThan(2 * (chanceOnly?.expected ?? Number.POSITIVE_INFINITY));
    const same = plantedDefects.filter(
      ({ modelNumber, component }) => modelNumber === chanceOnly?.model && component === chanceOnly.component,
    );
    expect(same).toEqual([]);
  });
});

function expectedOf(cells: readonly ExpectedFailures[], { modelNumber, component }: PlantedDefect): number {
  return cells.find((cell) => cell.model === modelNumber && cell.component === component)?.expected ?? 0;
}

/** By the text of the serial and of the weeks alone: B2409… lies between 2023-W40 and 2024-W39. */
function isMadeWithin(serial: string, { from, to }: PlantedDefect): boolean {
  const week = `20${serial.slice(1, 3)}-W${serial.slice(3, 5)}`;
  return week >= from && week <= to;
}

function limits(events: number) {
  return poissonRate({ events, exposure: 1, confidence: 0.95 });
}

function shareHeld(cells: readonly Cell[]): number {
  const held = cells.filter(
    ({ observed, expected }) => limits(observed).low <= expected && expected <= limits(observed).high,
  );
  return held.length / cells.length;
}

function summed(cells: readonly Cell[]): readonly Cell[] {
  const sums = new Map<string, Cell>();
  for (const { name, expected, observed } of cells) {
    const before = sums.get(name) ?? { expected: 0, observed: 0 };
    sums.set(name, { name, expected: before.expected + expected, observed: before.observed + observed });
  }
  return [...sums.values()];
}
