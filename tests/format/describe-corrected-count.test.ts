import { expect, test } from "vitest";
import { describeCorrectedCount } from "@/lib/format/describe-corrected-count";

const count = { kind: "corrected", events: 38, corrected: 45.2, lo: 41, hi: 52, level: 0.95 } as const;

test("says what is on record, what is expected, and the range", () => {
  expect(describeCorrectedCount(count, { weeks: 5 })).toBe(
    "Some of the last 5 weeks’ jobs are still on their way: 38 on record, about 45 expected, 41 to 52.",
  );
  expect(describeCorrectedCount(count, { weeks: 1, counted: "failures" })).toMatch(
    /^Some of the last week’s failures are/,
  );
});

test("where the best guess is what is on record it says perhaps no more, and where nothing can come it is silent", () => {
  const few = { ...count, corrected: 38.3, lo: 38, hi: 40 };
  expect(describeCorrectedCount(few, { weeks: 2 })).toContain("38 on record, perhaps no more, 38 to 40.");
  expect(describeCorrectedCount({ ...few, corrected: 38, hi: 38 }, { weeks: 2 })).toBeUndefined();
});
