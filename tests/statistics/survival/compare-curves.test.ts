import { expect, test } from "vitest";
import { compareCurves } from "@/lib/statistics/survival/compare-curves";
import type { LifeRow } from "@/lib/statistics/survival/life-rows";
import { expectClose, oneFromR, referenceRows } from "../../reference/read-reference";
import { leukemia } from "./reference-lives";

const released = (aided: boolean): LifeRow[] =>
  referenceRows("rossi_left_truncated")
    .filter((row) => (row.fin === "1") === aided)
    .map((row) => ({ entry: 0, exit: Number(row.week), event: row.arrest === "1", count: 1 }));

// R 4.2.2, survival 3.5.3, survdiff (rho 0 and 1). The remission trial's 16.79 is the textbook value too.
test.each([
  ["log-rank leukemia", () => leukemia("6-MP"), () => leukemia("control"), "log-rank"],
  ["peto leukemia", () => leukemia("6-MP"), () => leukemia("control"), "peto"],
  ["log-rank rossi fin", () => released(false), () => released(true), "log-rank"],
] as const)("%s agrees with R", (caseName, first, second, weights) => {
  const test = compareCurves(first(), second(), { weights });
  if (test.kind !== "compared") throw new Error(test.kind);
  for (const quantity of ["observed", "expected", "variance"] as const) {
    expectClose(test[quantity], oneFromR(caseName, quantity), 1e-10);
  }
  expectClose(test.chiSquare, oneFromR(caseName, "chi_square"), 1e-9);
});

// By hand. Age 1: 1 of 2 + 2 fails, in the first: expected 2/4. Age 4: first has 1 left, second 2; one fails, in the second.
// Gehan weights are 4 and 3: observed 4, expected 4 · 1/2 + 3 · 1/3 = 3, variance 16 · 1/4 + 9 · 2/9 = 6.
test("Gehan weights by hand", () => {
  const life = (exit: number, event: boolean): LifeRow => ({ entry: 0, exit, event, count: 1 });
  const test = compareCurves([life(1, true), life(9, false)], [life(4, true), life(9, false)], { weights: "gehan" });
  expect(test).toMatchObject({ observed: 4, expected: 3, variance: 6 });
});

test("swapping the groups changes neither chi-square nor probability", () => {
  const there = compareCurves(leukemia("6-MP"), leukemia("control"), { weights: "log-rank" });
  const back = compareCurves(leukemia("control"), leukemia("6-MP"), { weights: "log-rank" });
  if (there.kind !== "compared" || back.kind !== "compared") throw new Error("not compared");
  expectClose(back.chiSquare, there.chiSquare, 1e-12);
  expectClose(there.probability, 4.169e-5, 1e-3);
});

test("groups never watched at the same age cannot be compared", () => {
  const early: LifeRow[] = [{ entry: 0, exit: 2, event: true, count: 5 }];
  const late: LifeRow[] = [{ entry: 3, exit: 9, event: true, count: 5 }];
  expect(compareCurves(early, late, { weights: "log-rank" })).toEqual({ kind: "not-comparable" });
});
