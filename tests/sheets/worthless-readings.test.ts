import { randomUUID } from "node:crypto";
import { describe, expect, test } from "vitest";
import { askAbout } from "@/app/sheet/_flow/ask-about";
import { parseAnswer } from "@/lib/sheets/parse-answer";
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";
import { shippedSheets } from "@/lib/sheets/shipped-sheets";
import { visitPlan } from "@/lib/sheets/visit-plan";
import { walk } from "@/lib/sheets/walk";

// What a technician may type that proves nothing. Each is taken as record, with the sentence why, and shows no part: with the
// fault put right the same reading would.
const sheetsOf = (productType: "front_load_washer" | "electric_dryer") =>
  shippedSheets().filter((sheet) => sheet.productType === productType);
const washer = visitPlan({
  productType: "front_load_washer",
  symptom: "will_not_drain",
  sheets: sheetsOf("front_load_washer"),
});
const dryer = visitPlan({ productType: "electric_dryer", symptom: undefined, sheets: sheetsOf("electric_dryer") });

interface Typed {
  readonly check: string;
  readonly plan: typeof washer;
  /** As it should have been read. */
  readonly right: Readonly<Record<string, unknown>>;
  readonly wrong: Readonly<Record<string, unknown>>;
  readonly why: RegExp;
}

const ohms = { mode: "ohm", power: "off", isolated: true, sheetLow: 10, sheetHigh: 20, cautionsRead: true };
const volts = {
  mode: "volt_ac",
  power: "live",
  commanded: true,
  loadConnected: true,
  sheetLow: 110,
  sheetHigh: 126,
  cautionsRead: true,
};
const number = (value: number, unit: string) => ({ outcome: { kind: "number", value, unit } });
const cases: Readonly<Record<string, Typed>> = {
  "a reading in a unit of something else": {
    check: "pump_winding",
    plan: washer,
    right: { ...ohms, ...number(200, "ohm") },
    wrong: { ...ohms, ...number(200, "psi") },
    why: /unit does not measure/,
  },
  "ohms with the power on": {
    check: "pump_winding",
    plan: washer,
    right: { ...ohms, ...number(200, "ohm") },
    wrong: { ...ohms, ...number(200, "ohm"), power: "powered_panels_closed" },
    why: /with power on/,
  },
  "a sensor without its temperature": {
    check: "dryer_thermistor",
    plan: dryer,
    right: { ...ohms, ...number(200, "ohm"), temperatureC: 25 },
    wrong: { ...ohms, ...number(200, "ohm") },
    why: /without its temperature/,
  },
  "zero volts with no command": {
    check: "pump_voltage",
    plan: washer,
    right: { ...volts, ...number(0, "V") },
    wrong: { ...volts, ...number(0, "V"), commanded: false },
    why: /step was commanded/,
  },
  "zero volts with no load": {
    check: "pump_voltage",
    plan: washer,
    right: { ...volts, ...number(0, "V") },
    wrong: { ...volts, ...number(0, "V"), loadConnected: false },
    why: /without its load/,
  },
};

describe.each(Object.entries(cases))("%s", (_, { check, plan, right, wrong, why }) => {
  const told = (given: Readonly<Record<string, unknown>>) => {
    const pass = { mode: "observation", outcome: { kind: "finding", word: "pass" }, power: "off", cautionsRead: true };
    return walk(plan, [answer("interlocks", 1, pass), answer(check, 2, given)], []).path.at(-1)?.judged?.judgement;
  };
  test("is taken as record and marked as proving nothing, with the sentence why", () => {
    expect(told(wrong)).toMatchObject({ kind: "proves_nothing", why: expect.stringMatching(why) });
    expect(told(right)?.kind).not.toBe("proves_nothing");
  });
  test("shows no part, and the phone asks back at once", () => {
    const { verdict, current } = walk(plan, [answer(check, 1, wrong)], []);
    expect(verdict.kind).toBe("open");
    const judgement = current.at(-1)?.judgement;
    const given = answer(check, 1, wrong).given;
    if (given.kind !== "reading") throw new Error("a reading was given");
    expect(askAbout({ taken: given, judgement, range: undefined, isSure: false })).toMatchObject({
      kind: "proves nothing",
    });
  });
});

function answer(check: string, sequence: number, given: Readonly<Record<string, unknown>>): SheetAnswer {
  const body = {
    id: randomUUID(),
    sequence,
    check,
    time: 1,
    note: "",
    at: "2026-10-31T09:00:00-05:00",
    given: { kind: "reading", ...given },
  };
  const read = parseAnswer(body);
  if (!read.ok) throw new Error(read.problems.map(({ sentence }) => sentence).join("; "));
  return read.answer;
}
