import { expect, test } from "vitest";
import { againstLimits, visitRows } from "@/app/repeats/visits/visit-rows";

const group = (name: string, jobs: number, firstVisit: number) => ({
  names: [name],
  jobs,
  withVisits: jobs,
  firstVisit,
  calledBack: 0,
});

test("a group is held against the share of all, and that share against nothing", () => {
  const { rows, all } = visitRows([group("refrigerator", 400, 300), group("dishwasher", 400, 180)], ["type"]);
  expect(rows.map(({ key, firstVisit }) => [key, firstVisit && againstLimits(firstVisit)])).toEqual([
    ["Dishwasher", "below what chance gives"],
    ["Refrigerator", "above what chance gives"],
  ]);
  expect(all.firstVisit).toMatchObject({ events: 480, trials: 800, limits: undefined });
});

test("the range of a share is Wilson's", () => {
  // Newcombe 1998, Statistics in Medicine 17:857–872, table I, method 3: 81 of 263 (from memory).
  const [row] = visitRows([group("range", 263, 81)], ["type"]).rows;
  expect(row?.firstVisit?.low).toBeCloseTo(0.2553, 4);
  expect(row?.firstVisit?.high).toBeCloseTo(0.3662, 4);
});
