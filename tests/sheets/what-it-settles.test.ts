import { describe, expect, test } from "vitest";
import type { Told } from "@/e2e/no-drain-walks";
import { judgeReadings } from "@/lib/evidence/current-readings";
import { shippedSheets } from "@/lib/sheets/shipped-sheets";
import { isRuledOut } from "@/lib/sheets/verdict";
import { visitPlan } from "@/lib/sheets/visit-plan";
import { whatItSettles } from "@/lib/sheets/what-it-settles";
import { modelRanges, noDrainPlan, readingTold } from "./no-drain-told";

const plan = noDrainPlan();
const open = "winding open";
const mechanical = "impeller loose, worn or seized with no foreign object";
const board = "no drain output (triac or relay open)";
const harness = "open between board and pump";

function settles(called: string, ...told: readonly (readonly [check: string, Told])[]) {
  const stepOf = (key: string) => plan.steps.find(({ check }) => check.key === key);
  const step = stepOf(called);
  if (step === undefined) throw new Error(`no step ${called}`);
  const readings = told.flatMap(([key, said], index) => {
    const of = stepOf(key);
    const reading = of && readingTold(of.check, said);
    return reading === undefined ? [] : [{ ...reading, number: index + 1 }];
  });
  return whatItSettles(step, plan, judgeReadings(readings, modelRanges, plan.productType));
}

// By hand from the published table of rules: a winding in range speaks against "winding open"; a bad one against the mechanical
// failure, the harness and the board. Line voltage at the pump clears board and harness, none clears both ways a pump fails.
describe("what a step of the no-drain sheet settles", () => {
  test("the winding, before anything was read", () => {
    expect(settles("pump_winding")).toEqual({ good: [open], notGood: [mechanical, harness, board], leavesOpen: false });
  });
  test("the voltage at the pump", () => {
    expect(settles("pump_voltage")).toEqual({ good: [harness, board], notGood: [open, mechanical], leavesOpen: false });
  });
  test("the flow: full flow clears the pump and leaves the rest open", () => {
    expect(settles("flow_test")).toEqual({ good: [open, mechanical], notGood: [], leavesOpen: true });
  });
  test("what is ruled out already is not said again", () => {
    expect(settles("pump_voltage", ["pump_winding", { number: "14.6" }])).toMatchObject({ notGood: [mechanical] });
  });
  test("height alone rules out no part", () => {
    expect(settles("standpipe_height")).toEqual({ good: [], notGood: [], leavesOpen: true });
  });
});

// By definition: whatever word is found, what was said to be ruled out by it is.
test("on every sheet, what a word was said to rule out it rules out", () => {
  let said = 0;
  for (const sheet of shippedSheets()) {
    const own = visitPlan({ productType: sheet.productType, symptom: undefined, sheets: [sheet] });
    for (const step of own.steps)
      for (const [word, { means, state }] of Object.entries(step.check.findings)) {
        const reading = readingTold(step.check, { word: means });
        const current = judgeReadings(reading === undefined ? [] : [reading], [], sheet.productType);
        const { good, notGood } = whatItSettles(step, own, []);
        for (const failure of state === "good" ? good : notGood) {
          const of = own.entries.filter((entry) => entry.failure === failure);
          expect(
            of.some((entry) => isRuledOut(entry, current)),
            `${step.check.key} ${word}: ${failure}`,
          ).toBe(true);
          said++;
        }
      }
  }
  expect(said).toBeGreaterThan(40);
});
