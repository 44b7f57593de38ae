import { expect, test } from "vitest";
import { addDays, day } from "@/lib/calendar/day";
import { ageing } from "@/lib/claims/recovery/ageing";

const today = day("2025-06-30");

// The buckets are common practice, no source; each boundary is tried on both of its sides.
test.each([
  ["unfiled", 7, "0–7"],
  ["unfiled", 8, "8–14"],
  ["unfiled", 30, "22–30"],
  ["unfiled", 31, "over 30"],
  ["filed", 30, "0–30"],
  ["filed", 31, "31–45"],
  ["filed", 61, "over 60"],
  ["rejected", 14, "8–14"],
  ["rejected", 15, "15–30"],
] as const)("%s money of %i days is in %s", (kind, days, bucket) => {
  const cells = ageing([{ kind, since: addDays(today, -days), cents: 500 }], today);
  expect(cells.filter(({ cases }) => cases > 0)).toEqual([{ kind, days: bucket, cases: 1, cents: 500 }]);
});
