import { expect, test } from "vitest";
import type { Reading } from "@/lib/domain/reading";
import { noDrainVerdict } from "@/lib/evidence/no-drain-verdict";
import { answeredReadings } from "@/lib/sheets/answered-readings";
import { noDrainCases } from "@/synthetic-data/no-drain-cases";
import { noDrainPlan } from "./no-drain-told";
import { walkCase } from "./walk-case";

const plan = noDrainPlan();

// The ten cases of the trade's table, whose verdicts are the handbook's own. The sheet asks for the readings one by one,
// and must come to the same verdict from those that it asks for.
test.each(noDrainCases.map((each) => [each.name, each] as const))(
  "%s: the sheet comes to its row of the table",
  (_, told) => {
    const found = (key: string): readonly Reading[] => told.readings.filter((reading) => reading.check === key);
    const { answers, walked } = walkCase(plan, ({ check }) => found(check.key));
    const verdict = noDrainVerdict(answeredReadings(answers, { technician: undefined }));
    expect(verdict.kind).toBe(told.expectedVerdict);
    const cause = walked.verdict.kind === "outside" ? walked.verdict.cause : undefined;
    if (told.expectedCountedAs === "failure")
      expect(walked.verdict.kind === "part" && walked.verdict.entries[0]?.component).toBe(told.component);
    else expect(cause ?? "no_fault_found").toBe(told.cause);
  },
);

// A cause outside the part is found with the power off or panels closed: nobody is sent to live parts for it.
test.each(["Kinked hose", "Suds", "Object in the trap"])("%s: no live step is asked", (name) => {
  const told = noDrainCases.find((each) => each.name === name);
  const { answers } = walkCase(
    plan,
    ({ check }) => told?.readings.filter((reading) => reading.check === check.key) ?? [],
  );
  expect(answers.some(({ given }) => given.kind === "reading" && given.power === "live")).toBe(false);
});
