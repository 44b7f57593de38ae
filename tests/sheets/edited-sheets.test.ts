import { describe, expect, test } from "vitest";
import { checks } from "@/lib/evidence/checks";
import { type LooseStep, loosened } from "@/lib/sheets/loose-sheet";
import { type Sheet, sheetKey } from "@/lib/sheets/sheet";
import { parseSheetDocument } from "@/lib/sheets/sheet-document";
import { sheetProblems } from "@/lib/sheets/sheet-rules";
import { shippedSheet, shippedSheets } from "@/lib/sheets/shipped-sheets";
import { visitPlan } from "@/lib/sheets/visit-plan";
import { walk } from "@/lib/sheets/walk";
import { randomSource } from "../statistics/random-source";
import { ownMeasure, ownStep } from "./own-check";
import { walkCase } from "./walk-case";

const shipped = shippedSheet("front_load_washer", "drain_pump") ?? noSheet();
const steps = shipped.steps.map(loosened);

function noSheet(): never {
  throw new Error("the drain pump of front-load washers has no sheet");
}

/** What the editor says to these steps when they are to be published. */
function said(edited: readonly LooseStep[], of: Sheet = shipped): readonly string[] {
  const read = parseSheetDocument(JSON.parse(JSON.stringify({ steps: edited })));
  if (!read.ok) return read.problems.map(({ sentence }) => sentence);
  return sheetProblems({ ...of, version: 2, steps: read.steps }, of).map(({ sentence }) => sentence);
}
const changed = (key: string, part: Partial<LooseStep>) =>
  steps.map((step) => (step.check === key ? { ...step, ...part } : step));
const sheetOf = (edited: readonly LooseStep[]): Sheet => {
  const read = parseSheetDocument(JSON.parse(JSON.stringify({ steps: edited })));
  if (!read.ok) throw new Error(read.problems.map(({ sentence }) => sentence).join(" "));
  return { ...shipped, version: 2, steps: read.steps };
};

test("every sheet as it comes with the program may be published as it is", () => {
  for (const sheet of shippedSheets()) expect(said(sheet.steps.map(loosened), sheet), sheetKey(sheet)).toEqual([]);
});

describe("bad input is named with its step", () => {
  const supply = "supply_voltage";
  test.each<[string, readonly LooseStep[], RegExp]>([
    [
      "a step that waits for a check that is asked after it",
      changed("hose", { after: { check: "trap", came: "bad" } }),
      /^Step \d+, Drain hose: it waits for Trap, filter and sump, which is asked after it\. Put .* earlier/,
    ],
    [
      "a step with the power off that waits for a live one, wherever it stands on the sheet",
      [
        ...steps.filter(({ check }) => check !== "winding_to_ground"),
        ...changed("winding_to_ground", { after: { check: "pump_voltage", came: "good" } }).filter(
          ({ check }) => check === "winding_to_ground",
        ),
      ],
      /Component to ground: it waits for Voltage at the pump, which is asked after it: steps with the power off come before/,
    ],
    ["a step that waits for itself", changed("trap", { after: { check: "trap", came: "bad" } }), /waits for itself/],
    [
      "a step that waits for what is not on the sheet",
      changed("trap", { after: { check: "door_switch", came: "bad" } }),
      /not on this sheet/,
    ],
    [
      "a step that waits for a word that is not there",
      changed("trap", { after: { check: "hose", came: { word: "purple" } } }),
      /the word “purple”, which Drain hose does not have/,
    ],
    [
      "what makes live work safer made to wait",
      changed(supply, { after: { check: "hose", came: "good" } }),
      /Supply voltage under load: it makes later steps safe, so it is always asked/,
    ],
    [
      "a live step without its caution",
      [...steps, ownMeasure({ power: "live", mode: "volt_ac", unit: "V", cautions: ["sheet_decides"] })],
      /Tray heater: a check in this state needs its caution “Live test: qualified persons only.*no live step is shown without it/,
    ],
    [
      "a range whose low end is over its high end",
      [...steps, ownMeasure({ low: "60", high: "40" })],
      /Tray heater: the lower end of its range, 60, is over the upper end, 40/,
    ],
    [
      "a unit that does not belong to the mode",
      [...steps, ownMeasure({ unit: "psi" })],
      /Tray heater: the unit “psi” does not belong to this meter, which reads in ohm/,
    ],
    ["ohms with the power on", [...steps, ownMeasure({ power: "live" })], /measured with the power off/],
    [
      "volts with the panels closed",
      [...steps, ownMeasure({ power: "powered_panels_closed", mode: "volt_ac", unit: "V" })],
      /live work/,
    ],
    ["a range without a source", [...steps, ownMeasure({ source: " " })], /its range needs a source/],
    ["a measurement without a range", [...steps, ownMeasure({ low: "", high: "" })], /needs a range/],
    ["a number that is none", [...steps, ownMeasure({ low: "ten" })], /Tray heater: lower end “ten” is not a number/],
    ["a look without words", [...steps, ownStep({ words: [] })], /at least two words/],
    [
      "words of which none is good",
      [
        ...steps,
        ownStep({
          words: [
            { word: "wet", state: "bad" },
            { word: "torn", state: "bad" },
          ],
        }),
      ],
      /none of its words/,
    ],
    [
      "an outside word without its cause",
      [
        ...steps,
        ownStep({
          words: [
            { word: "dry", state: "good" },
            { word: "chewed", state: "outside" },
          ],
        }),
      ],
      /cause outside the part/,
    ],
    ["a check without a name", [...steps, ownStep({ name: " " })], /new check: name is blank/],
    ["minutes that are none", changed("hose", { minutes: "a while" }), /Drain hose: minutes “a while” is not a number/],
    ["no minutes at all", changed("hose", { minutes: "0" }), /half a minute or more/],
    [
      "a check of no catalogue",
      [...steps, { ...ownStep(), own: undefined, check: "flux" }],
      /“flux” is no check of the catalogue/,
    ],
    ["a check twice", [...steps, ...steps.slice(0, 1)], /is on the sheet twice/],
    [
      "a check that the rules need taken off",
      steps.slice(1),
      /The rules of evidence ask for Stored fault codes: it cannot be left out/,
    ],
    ["no step", [], /needs at least one check/],
  ])("%s", (_, edited, sentence) => {
    const found = said(edited);
    expect(found.length).toBeGreaterThan(0);
    expect(
      found.some((each) => sentence.test(each)),
      found.join("\n"),
    ).toBe(true);
  });

  // The impeller is looked at only where the hose is not as it should be: with a clear hose nothing ever shows the broken one.
  test("a sheet without an end: what its checks wait for hides a failure that it is there to find", () => {
    const cut = changed("impeller", { after: { check: "hose", came: "bad" } });
    expect(said(cut).join("\n")).toMatch(/The sheet has no end for “impeller loose, worn or seized/);
  });
  test("nor may an added check stand between the sheet and its end, however it comes out", () => {
    const behind = [ownStep(), ...changed("impeller", { after: { check: "own:drip_tray", came: "good" } })];
    expect(said(behind).join("\n")).toMatch(/has no end for “impeller/);
  });
});

describe("safety cannot be edited away", () => {
  // Random editing: any order, any branch, checks of the catalogue added. Whatever may be published is asked safest first,
  // with every caution that the catalogue gives.
  test("60 random edits: what may be published keeps the order of safety and every caution", () => {
    const random = randomSource(6_000_601).uniform;
    const pick = <Each>(from: readonly Each[]): Each => from[Math.floor(random() * from.length)] ?? noPick();
    let published = 0;
    for (let round = 0; round < 60; round++) {
      const sheet = pick(shippedSheets());
      const edited = randomEdit(sheet, random, pick);
      const read = parseSheetDocument({ steps: edited });
      if (!read.ok) continue;
      const next = { ...sheet, version: 2, steps: read.steps };
      if (sheetProblems(next, sheet).length > 0) continue;
      published++;
      const plan = visitPlan({ productType: sheet.productType, symptom: undefined, sheets: [next] });
      const order = { off: 1, powered_panels_closed: 2, live: 3 };
      const ranks = plan.steps.map(({ check }) => (check.key === "fault_code" ? 0 : order[check.energy]));
      expect(ranks).toEqual([...ranks].sort());
      for (const { check } of plan.steps) {
        const own = checks.find(({ key }) => key === check.key)?.cautions ?? [];
        expect(check.cautions).toEqual(expect.arrayContaining([...own]));
      }
      const live = plan.steps.filter(({ check }) => check.energy === "live").map(({ check }) => check.key);
      for (const safer of ["supply_voltage", "polarity"])
        if (live.includes(safer)) {
          expect(plan.steps.find(({ check }) => check.key === safer)?.branch).toBeUndefined();
          expect(live.slice(0, 2)).toContain(safer);
        }
    }
    expect(published).toBeGreaterThan(10);
  });
});

function randomEdit(sheet: Sheet, random: () => number, pick: <Each>(from: readonly Each[]) => Each): LooseStep[] {
  const edited = sheet.steps.map(loosened);
  for (let i = edited.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    const [a, b] = [edited[i], edited[j]];
    if (a !== undefined && b !== undefined) [edited[i], edited[j]] = [b, a];
  }
  const extra = pick(checks.filter(({ key }) => !edited.some(({ check }) => check === key)));
  edited.splice(Math.floor(random() * edited.length), 0, {
    check: extra.key,
    minutes: "3",
    times: "1",
    note: "",
    cautions: [],
  });
  if (random() < 0.5) {
    const at = Math.floor(random() * edited.length);
    const step = edited[at];
    if (step !== undefined)
      edited[at] = { ...step, after: { check: pick(edited).check, came: random() < 0.5 ? "good" : "bad" } };
  }
  return edited;
}

function noPick(): never {
  throw new Error("nothing to pick from");
}

describe("an added check is asked", () => {
  const added = sheetOf([...steps, ownStep({}, { after: { check: "hose", came: "good" } }), loosenedDoor()]);
  const plan = visitPlan({ productType: "front_load_washer", symptom: "will_not_drain", sheets: [added] });

  test("in its tier, only after what it waits for, with its own words", () => {
    const tray = plan.steps.find(({ check }) => check.key === "own:drip_tray");
    expect(tray).toMatchObject({ tier: 1, branch: { words: "drain hose: as it should be" } });
    expect(walk(plan, [], []).open.map(({ check }) => check.key)).not.toContain("own:drip_tray");
    const { walked } = walkCase(plan, () => [], { until: ({ path }) => path.length > 3 });
    expect(walked.open.map(({ check }) => check.key)).not.toContain("own:drip_tray");
    const hose = walkCase(plan, ({ check }) => (check.key === "hose" ? [found("hose", "clear")] : []), {
      until: ({ current }) => current.length > 0,
    });
    expect(hose.walked.open.map(({ check }) => check.key)).toContain("own:drip_tray");
    expect(hose.walked.open.map(({ check }) => check.key)).toContain("door_switch");
  });
  test("and a word of it that names an outside cause ends the search there", () => {
    const { walked } = walkCase(plan, ({ check }) =>
      check.key === "hose"
        ? [found("hose", "clear")]
        : check.key === "own:drip_tray"
          ? [found("own:drip_tray", "chewed")]
          : [],
    );
    expect(walked.verdict).toMatchObject({ kind: "outside", cause: "liquid_pest", why: "chewed" });
  });
});

function loosenedDoor(): LooseStep {
  return { check: "door_switch", minutes: "5", times: "1", note: "", cautions: [] };
}

function found(check: string, word: string) {
  return {
    number: 0,
    check,
    pointA: undefined,
    pointB: undefined,
    mode: "observation" as const,
    outcome: { kind: "finding" as const, word },
    power: "off" as const,
    isolated: undefined,
    loadConnected: undefined,
    commanded: undefined,
    temperatureC: undefined,
    sheetLow: undefined,
    sheetHigh: undefined,
    sheetReference: undefined,
    note: undefined,
    technician: undefined,
    takenAt: undefined,
  };
}
