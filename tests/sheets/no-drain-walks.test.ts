import { expect, test } from "vitest";
import type { Reading } from "@/lib/domain/reading";
import { noDrainVerdict } from "@/lib/evidence/no-drain-verdict";
import { answeredReadings } from "@/lib/sheets/answered-readings";
import { shippedSheets } from "@/lib/sheets/shipped-sheets";
import { componentsBehind, visitPlan } from "@/lib/sheets/visit-plan";
import { noDrainCases } from "@/synthetic-data/no-drain-cases";
import { walkCase } from "./walk-case";

const sheets = shippedSheets().filter(({ productType }) => productType === "front_load_washer");
const behind = componentsBehind("front_load_washer", "will_not_drain", sheets);
const plan = visitPlan({
  productType: "front_load_washer",
  symptom: "will_not_drain",
  sheets: sheets.filter(({ component }) => behind.includes(component)),
});

test.each(noDrainCases.map((each) => [each.name, each] as const))("%s", (_, told) => {
  const found = (key: string): readonly Reading[] => {
    return told.readings.filter((reading) => reading.check === key);
  };
  const { answers, walked } = walkCase(plan, ({ check }) => found(check.key));
  console.log(
    told.name,
    "\n  ",
    answers.map(({ check, given }) => (given.kind === "skip" ? `(${check})` : check)).join(" "),
    "\n  ",
    walked.verdict.kind,
    "why" in walked.verdict ? walked.verdict.why : "",
    "| needless",
    walked.needless.map((s) => s.check.key).join(" "),
  );
  const verdict = noDrainVerdict(answeredReadings(answers, { technician: undefined }));
  expect(verdict.kind).toBe(told.expectedVerdict);
});
