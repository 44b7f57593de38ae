import { expect, test } from "vitest";
import { ageBands } from "@/lib/statistics/survival/age-bands";
import { bandHazards } from "@/lib/statistics/survival/band-hazards";
import type { LifeRow } from "@/lib/statistics/survival/life-rows";
import { madeUpLives } from "./made-up-lives";
import { macs } from "./reference-lives";

// By definition: each row's own overlap with the band.
test.each([
  ["made-up lives", () => madeUpLives(300).filter((row) => row.exit > row.entry)],
  ["macs", macs],
])("%s: counts and time lived are those of each row added up", (_, rows) => {
  const breaks = [0, 1, 4, 9.5, 20, 45];
  ageBands(rows(), breaks).forEach((band, i) => {
    const [start, end] = [breaks[i] ?? 0, breaks[i + 1] ?? 0];
    const total = (value: (row: LifeRow) => number) => rows().reduce((sum, row) => sum + row.count * value(row), 0);
    const within = (age: number) => age >= start && age < end;
    const overlap = ({ entry, exit }: LifeRow) => Math.max(0, Math.min(exit, end) - Math.max(entry, start));
    expect(band.atStart).toBe(total((row) => (row.entry <= start && row.exit >= start ? 1 : 0)));
    expect(band.entered).toBe(total((row) => (row.entry > start && row.entry < end ? 1 : 0)));
    expect(band.failed).toBe(total((row) => (row.event && within(row.exit) ? 1 : 0)));
    expect(band.lost).toBe(total((row) => (!row.event && within(row.exit) ? 1 : 0)));
    expect(band.exposure).toBeCloseTo(total(overlap), 8);
  });
});

// Garwood: 5 failures have the 95 % limits 1.6235 and 11.6683 (Pearson & Hartley, Table 40, remembered); here over 40 unit-years.
test("the hazard of a band has exact Poisson limits, and a band without exposure is named", () => {
  const rows: LifeRow[] = [
    { entry: 0, exit: 2, event: true, count: 5 },
    { entry: 0, exit: 3, event: false, count: 10 },
  ];
  const [first, second] = bandHazards(ageBands(rows, [0, 3, 4]), { confidence: 0.95 });
  expect(first).toMatchObject({ kind: "hazard", failed: 5, exposure: 40, rate: 0.125 });
  if (first?.kind !== "hazard") throw new Error("expected a hazard");
  expect(first.low * 40).toBeCloseTo(1.6235, 4);
  expect(first.high * 40).toBeCloseTo(11.6683, 4);
  expect(second).toEqual({ kind: "no-exposure", start: 3, end: 4 });
});

test("breaks must ascend", () => {
  expect(() => ageBands([], [0])).toThrow("breaks must hold at least two ages; it holds 1");
  expect(() => ageBands([], [0, 5, 5])).toThrow("breaks[2] is 5");
});
