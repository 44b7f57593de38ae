import { describe, expect, test } from "vitest";
import { entries } from "@/lib/evidence/entries";
import type { EvidenceEntry } from "@/lib/evidence/entry";
import { causesShownBy } from "@/lib/sheets/expected-findings";
import { shippedSheet, shippedSheets } from "@/lib/sheets/shipped-sheets";
import { componentsBehind, type VisitPlan, visitPlan } from "@/lib/sheets/visit-plan";
import { toldReadings } from "./told-readings";
import { walkCase } from "./walk-case";

// Each of the 64 published entries, and the harness of the no-drain table, told to its sheet reading by reading as a machine
// shows it that failed so: by the sheet of its component alone, and as one of all that its first complaint may be.
const parts = entries.filter(({ failureClass }) => failureClass !== "external");
const external = entries.filter(({ failureClass }) => failureClass === "external");
const repeats = new Set(["flow_test"]);

function ownPlan({ productType, component }: EvidenceEntry): VisitPlan {
  const sheet = shippedSheet(productType, component);
  return visitPlan({ productType, symptom: undefined, sheets: sheet === undefined ? [] : [sheet] });
}

function planOfComplaint({ productType, symptoms }: EvidenceEntry): VisitPlan {
  const [symptom = ""] = symptoms;
  const sheets = shippedSheets().filter((sheet) => sheet.productType === productType);
  const behind = new Set(componentsBehind(productType, symptom, sheets));
  return visitPlan({ productType, symptom, sheets: sheets.filter(({ component }) => behind.has(component)) });
}

test("every entry is walked here", () => {
  expect(parts.length + external.length).toBe(65);
  expect(external.length).toBeGreaterThan(0);
});

describe.each(parts.map((entry) => [entry.id, entry] as const))("%s", (id, entry) => {
  test.each([
    ["the sheet of its component", ownPlan],
    ["the sheets of its complaint", planOfComplaint],
  ])("is named by %s", (_, planOf) => {
    const { walked, answers } = walkCase(planOf(entry), toldReadings({ kind: "part", entry }, repeats));
    const named =
      walked.verdict.kind === "part" ? walked.verdict.entries.map((each) => each.component) : walked.verdict;
    expect(named).toContain(entry.component);
    const asked = new Set(answers.map(({ check }) => check));
    if (planOf === ownPlan)
      for (const step of entry.steps)
        expect(
          step.some((check) => asked.has(check)),
          `${id}: ${step}`,
        ).toBe(true);
  });
});

describe.each(external.map((entry) => [entry.id, entry] as const))("%s", (_, entry) => {
  const plan = ownPlan(entry);
  const ways = plan.steps.flatMap(({ check }) => causesShownBy(check).map((cause) => ({ cause, shownBy: check.key })));
  test("each check of its sheet that shows an outside cause ends there", () => {
    expect(ways.length).toBeGreaterThan(0);
    for (const { cause, shownBy } of ways) {
      const { walked } = walkCase(plan, toldReadings({ kind: "outside", cause, shownBy }, repeats));
      expect(walked.verdict, `${shownBy}: ${cause}`).toMatchObject({ kind: "outside", cause });
    }
  });
});
