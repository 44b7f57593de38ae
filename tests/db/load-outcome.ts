// What came of a load, in the shortest form that a test can compare.
import { expect } from "vitest";
import type { LoadResult } from "@/db/writes/load-result";

/** Total, new, changed, same, held, and refused where there are any. */
export function counts(result: LoadResult): readonly number[] {
  if (!("report" in result)) throw new Error(JSON.stringify(result));
  const { rowsTotal, rowsNew, rowsChanged, rowsSame, rowsHeld, rowsRefused } = result.report;
  expect(rowsNew + rowsChanged + rowsSame + rowsHeld + rowsRefused).toBe(rowsTotal);
  return [rowsTotal, rowsNew, rowsChanged, rowsSame, rowsHeld, ...(rowsRefused > 0 ? [rowsRefused] : [])];
}

/** Row, column and problem of everything that is wrong. */
export function problems(result: LoadResult): readonly string[] {
  if ("report" in result)
    return result.report.problems.map(({ row, column, problem }) => `${row} ${column} ${problem}`);
  return "problems" in result ? result.problems.map(({ problem }) => problem) : [];
}
