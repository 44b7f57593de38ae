import { expect, test } from "vitest";
import { actWords } from "@/app/files/_components/act-words";

const rows = { rowsTotal: 0, rowsNew: 0, rowsChanged: 0, rowsSame: 0, rowsHeld: 0, rowsRefused: 0 };

test.each([
  [{ rowsNew: 790, rowsChanged: 12 }, "jobs", "Add 790 jobs, change 12"],
  [{ rowsNew: 1 }, "jobs", "Add 1 job"],
  [{ rowsChanged: 1 }, "policies", "Change 1 policy"],
  [{ rowsNew: 2, rowsHeld: 1 }, "part-lines", "Add 2 part lines, hold 1 row back"],
  [{ rowsHeld: 1200 }, "units", "Hold 1,200 rows back"],
] as const)("%j of %s: %s", (counts, kind, words) => {
  expect(actWords({ ...rows, ...counts }, kind)).toBe(words);
});
