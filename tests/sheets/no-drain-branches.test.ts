// Every way out of every step of the no-drain sheet is taken on the phone. The ways are read from the sheet, its rules of evidence and
// its table; what is taken, from the walks of e2e/check-sheet.spec.ts, of which only what the browser asserts is counted:
// steps that a walk says are asked, and slips, each of which must be made.
import { describe, expect, test } from "vitest";
import { verdictTitle } from "@/app/sheet/_flow/verdict-words";
import { changedInReview, type Slip, slips } from "@/e2e/no-drain-slips";
import { type NoDrainWalk, noDrainWalks, type Told } from "@/e2e/no-drain-walks";
import type { Reading } from "@/lib/domain/reading";
import type { Check } from "@/lib/evidence/check";
import { type Condition, holds } from "@/lib/evidence/condition";
import { type JudgedReading, judgeReadings } from "@/lib/evidence/current-readings";
import { type NoDrainKind, noDrainKinds, noDrainVerdict } from "@/lib/evidence/no-drain-verdict";
import { answeredReadings } from "@/lib/sheets/answered-readings";
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";
import type { PlanStep } from "@/lib/sheets/visit-plan";
import { walk } from "@/lib/sheets/walk";
import { modelRanges, noDrainPlan, readingTold } from "./no-drain-told";

const plan = noDrainPlan();
const stepCalled = new Map(plan.steps.map((step) => [step.check.name, step]));

/** Conditions of the sheet: what its steps wait for, and what its entries are proven and contradicted by. */
const conditions: readonly Condition[] = [
  ...plan.steps.flatMap(({ branch }) => branch?.when ?? []),
  ...plan.entries.flatMap(({ proof, contradictedBy, notCoveredIf }) => [
    proof,
    ...[...contradictedBy, ...notCoveredIf].map(({ when }) => when),
  ]),
];

/** One thing that a step may show: what the sheet and its rules tell apart. */
interface Way {
  readonly check: Check;
  readonly name: string;
  readonly when: Condition;
}

/** Each word of a step, that a measurement is as it should be or is not, and whatever else a condition asks of the step. */
const ways: readonly Way[] = plan.steps.flatMap(({ check }) => {
  const words = Object.keys(check.findings).map((word) => ({ is: "word", check: check.key, words: [word] }) as const);
  const measured = check.unit === undefined ? [] : (["good", "bad"] as const);
  const asked = conditions.flatMap(partsOf).filter((part) => part.check === check.key && part.is !== "word");
  const all: readonly Condition[] = [...words, ...measured.map((is) => ({ is, check: check.key })), ...asked];
  return [...new Map(all.map((when) => [JSON.stringify(when), when]))].map(([name, when]) => ({ check, name, when }));
});

/** Of these a walk's own heading tells nothing more: a reading that is good or bad also decided, and was taken. */
const taken = noDrainWalks.flatMap((each) => [
  ...each.asked.map((step) => ({ step, told: each.readings[step] })),
  ...slipsOf(each).map(({ step, told }) => ({ step, told })),
]);

describe("ways out of the steps of the no-drain sheet", () => {
  test("there are as many as the sheet says", () => {
    expect(ways.length).toBeGreaterThan(50);
  });
  test.each(ways)("$check.name: $name", ({ check, when }) => {
    const shown = taken.filter(({ step }) => step === check.name);
    expect(shown.some(({ told }) => told !== undefined && holds(when, judged(check, told)) !== undefined)).toBe(true);
  });
  test.each(plan.steps.filter(({ branch }) => branch !== undefined))(
    "$check.name waits: asked on one walk, not on another",
    ({ check }) => {
      expect(
        noDrainWalks.some(({ asked }) => asked.includes(check.name)),
        "asked",
      ).toBe(true);
      expect(
        noDrainWalks.some(({ never }) => never.includes(check.name)),
        "never",
      ).toBe(true);
    },
  );
  test("a code is shown on one walk, none is stored on another", () => {
    const told = taken
      .filter(({ step }) => step === "Stored fault codes")
      .map((each) => Object.keys(each.told ?? {})[0]);
    expect(new Set(told)).toEqual(new Set(["code", "none"]));
  });
});

const walkedOut = new Map(noDrainWalks.map((each) => [each.name, walkOut(each)]));

describe("the walks as the sheet has them", () => {
  test("each row of the table is come to", () => {
    const come = new Set<NoDrainKind>([...walkedOut.values()].flatMap(({ kinds }) => kinds));
    expect([...noDrainKinds].filter((kind) => !come.has(kind))).toEqual([]);
  });
  test.each(noDrainWalks)("$name: asks what it says and ends where it says", (each) => {
    const { asked = [], ended } = walkedOut.get(each.name) ?? {};
    expect(asked).toEqual(expect.arrayContaining([...each.asked]));
    for (const step of each.never) expect(asked).not.toContain(step);
    expect(ended).toContain(each.finding);
  });
  test.each(noDrainWalks.flatMap((each) => slipsOf(each).map((slip) => ({ walk: each.name, slip }))))(
    "$walk, $slip.step: the slip is made where it says",
    ({ walk: name, slip }) => {
      expect(walkedOut.get(name)?.headings.get(slip)).toBe(slip.finding ?? null);
    },
  );
});

function slipsOf({ name }: NoDrainWalk): readonly Slip[] {
  const changed = changedInReview[name];
  return [...(slips[name] ?? []), ...(changed === undefined ? [] : [changed])];
}

/** Parts of a condition that ask something of one check. */
function partsOf(condition: Condition): readonly Extract<Condition, { readonly check: string }>[] {
  switch (condition.is) {
    case "all":
    case "any":
      return condition.of.flatMap(partsOf);
    case "not":
      return partsOf(condition.of);
    case "by_policy":
      return [];
    default:
      return [condition];
  }
}

/** What is told of one step, judged as on a machine whose drain step is called for and whose interlocks are satisfied. */
function judged(check: Check, told: Told): readonly JudgedReading[] {
  const before = ["drain_command", "interlocks"].flatMap((key) => {
    const step = plan.steps.find((each) => each.check.key === key && key !== check.key);
    const word = Object.keys(step?.check.findings ?? {})[0] ?? "";
    return step === undefined
      ? []
      : [{ ...readingOf(step.check, { none: true }), outcome: { kind: "finding", word } as const }];
  });
  const readings = [...before, readingOf(check, told)].map((reading, index) => ({ ...reading, number: index + 1 }));
  return judgeReadings(readings, modelRanges, plan.productType);
}

function readingOf(check: Check, told: Told): Reading {
  const reading = readingTold(check, told);
  if (reading === undefined) throw new Error(`${check.key} is passed over`);
  return reading;
}

/** The walk in the sheet's own order, each slip made before its step is answered; headings by slip, null where the next step is asked. */
function walkOut(each: NoDrainWalk) {
  const headings = new Map<Slip, string | null>();
  const kinds: NoDrainKind[] = [];
  const asked: string[] = [];
  const note = (answers: readonly SheetAnswer[]) => {
    kinds.push(noDrainVerdict(answeredReadings(answers, { technician: undefined }), modelRanges).kind);
    const { open, verdict } = walk(plan, answers, modelRanges);
    return open.length > 0 ? null : verdictTitle(verdict);
  };
  const say = ({ check }: PlanStep, told: Told, answers: readonly SheetAnswer[]): readonly SheetAnswer[] => {
    const { number: _, check: __, note: ___, technician: ____, takenAt: _____, ...reading } = readingOf(check, told);
    const sequence = answers.length + 1;
    const given = { kind: "reading", ...reading, cautionsRead: true } as const;
    return [...answers, { id: String(sequence), sequence, check: check.key, time: 1, given, note: "", at: "" }];
  };
  let answers: readonly SheetAnswer[] = [];
  for (
    let [next] = walk(plan, answers, modelRanges).open;
    next !== undefined;
    [next] = walk(plan, answers, modelRanges).open
  ) {
    const { name } = next.check;
    const told = each.readings[name];
    if (told === undefined || asked.includes(name)) throw new Error(`${each.name}: nothing is told of ${name}`);
    asked.push(name);
    for (const slip of (slips[each.name] ?? []).filter(({ step }) => step === name)) {
      answers = say(next, slip.told, answers);
      headings.set(slip, note(answers));
    }
    answers = say(next, told, answers);
    note(answers);
  }
  const ended = note(answers);
  const changed = changedInReview[each.name];
  const step = changed === undefined ? undefined : stepCalled.get(changed.step);
  if (changed !== undefined && step !== undefined) headings.set(changed, note(say(step, changed.told, answers)));
  return { headings, kinds, asked, ended };
}
