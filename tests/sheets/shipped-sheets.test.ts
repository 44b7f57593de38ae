import { describe, expect, test } from "vitest";
import { cautions } from "@/lib/evidence/cautions";
import type { GeneralRange } from "@/lib/evidence/check";
import { checkOf, checks } from "@/lib/evidence/checks";
import { entries } from "@/lib/evidence/entries";
import { branchOf } from "@/lib/sheets/branches";
import { sheetKey } from "@/lib/sheets/sheet";
import { shippedSheet, shippedSheets } from "@/lib/sheets/shipped-sheets";
import { testPoints } from "@/lib/sheets/test-points";
import { visitPlan } from "@/lib/sheets/visit-plan";
import { rangesWithoutSource } from "./ranges-without-source";

const sheets = shippedSheets();

describe("sheets as they come with the program", () => {
  test("there is one for every appliance and component that has rules of evidence", () => {
    for (const { productType, component } of entries) expect(shippedSheet(productType, component)).toBeDefined();
    expect(new Set(sheets.map(sheetKey)).size).toBe(sheets.length);
  });
  test("every check that an entry requires is on its sheet", () => {
    for (const { id, productType, component, steps } of entries) {
      const listed = shippedSheet(productType, component)?.steps.map(({ check }) => check) ?? [];
      for (const key of steps.flat()) expect(listed, id).toContain(key);
    }
  });
  test("each step has a check, minutes, drawing, points in words, something it says, and a caution", () => {
    for (const { steps } of sheets)
      for (const { check: key, minutes } of steps) {
        const check = checkOf(key);
        expect(check?.points, key).not.toBe("");
        expect(check?.proves, key).not.toBe("");
        expect(minutes, key).toBeGreaterThan(0);
        expect(
          check?.cautions.every((caution) => cautions[caution].text.length > 0),
          key,
        ).toBe(true);
        expect(check && testPoints(check).drawing, key).toBeDefined();
      }
  });
  test("a live step always has the caution of live work, and ohms are never asked with power on", () => {
    for (const check of checks) {
      if (check.energy === "live") expect(check.cautions, check.key).toContain("live_work");
      if (check.modes[0] === "ohm") expect(check.energy, check.key).toBe("off");
    }
  });
  test("every plan asks with the power off first and live last, with what makes live safer before other live work", () => {
    for (const sheet of sheets) {
      const { steps } = visitPlan({ productType: sheet.productType, symptom: undefined, sheets: [sheet] });
      const tiers = steps.map(({ tier }) => tier);
      expect(tiers, sheetKey(sheet)).toEqual([...tiers].sort());
      const energies = steps.filter(({ tier }) => tier > 0).map(({ check }) => check.energy);
      const order = { off: 0, powered_panels_closed: 1, live: 2 };
      expect(energies, sheetKey(sheet)).toEqual([...energies].sort((a, b) => order[a] - order[b]));
    }
  });
  test("ohms and volts have two named points", () => {
    for (const check of checks)
      if (["ohm", "continuity", "volt_ac", "volt_dc"].includes(check.modes[0]))
        expect(testPoints(check).pairs.flat().length, check.key).toBeGreaterThanOrEqual(2);
  });
  test("a branch speaks only of checks on the plan, and nothing waits for itself", () => {
    const all = new Set(checks.map(({ key }) => key));
    for (const key of all) expect(JSON.stringify(branchOf(key, all)?.when ?? ""), key).not.toContain(`"${key}"`);
    expect(branchOf("connector_reseat", new Set(["connector_reseat"]))).toBeUndefined();
  });
});

const ranges = checks.flatMap((check) => check.general.map((range) => ({ check: check.key, range })));
const isPublished = ({ mark }: GeneralRange) => ["law", "standard", "government", "published"].includes(mark);

describe("ranges that are shipped", () => {
  test("each carries its source and its mark", () => {
    for (const { check, range } of ranges) expect(range.source.trim(), check).not.toBe("");
  });
  // The list of ranges without a published source: whoever adds one must add it here, and so see that it has none.
  test("those without a published source are these and no others", () => {
    const without = ranges.filter(({ range }) => !isPublished(range)).map(({ check }) => check);
    expect([...new Set(without)].sort()).toEqual(rangesWithoutSource);
  });
});
