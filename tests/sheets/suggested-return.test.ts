import { describe, expect, test } from "vitest";
import { addDays, day } from "@/lib/calendar/day";
import type { EarlierJob } from "@/lib/domain/job";
import { suggestedReturn } from "@/lib/sheets/suggested-return";

const asked = day("2026-03-31");
const job = (jobNumber: string, daysBefore: number, part: Partial<EarlierJob> = {}): EarlierJob => ({
  jobNumber,
  completedOn: addDays(asked, -daysBefore),
  component: "drain_pump",
  symptom: "will_not_drain",
  cause: "component",
  ...part,
});
const suggest = (earlier: readonly EarlierJob[], component?: string) =>
  suggestedReturn({ symptom: "will_not_drain", component, requestedOn: asked, repeatDays: 30, earlier });

describe("a visit that seems to return to an earlier job", () => {
  // The published rule: second repair within 30 days. Its last day and the day after.
  test.each([
    [0, true],
    [30, true],
    [31, false],
    [-1, false],
  ])("completed %i days before: %s", (days, isOne) => {
    expect(suggest([job("J1", days)])?.jobNumber).toBe(isOne ? "J1" : undefined);
  });
  test("by the complaint before anything is measured, by the component once that is known", () => {
    const earlier = [job("J1", 20, { symptom: "hums" }), job("J2", 10, { component: "door_lock" })];
    expect(suggest(earlier)).toEqual({ jobNumber: "J2", days: 10, same: "symptom" });
    expect(suggest(earlier, "drain_pump")).toEqual({ jobNumber: "J1", days: 20, same: "component" });
  });
  test("the latest of several, and none of another complaint and component", () => {
    expect(suggest([job("J1", 20), job("J2", 5)])?.jobNumber).toBe("J2");
    expect(suggest([job("J1", 5, { symptom: "hums" })], "door_lock")).toBeUndefined();
  });
});
