// What an edited sheet must keep to before it may be published. Safety is not among the things that editing can change:
// steps are sorted by tier whatever the sheet's order, and what makes later steps safe may not be made to wait.
import type { OwnCheck } from "@/lib/domain/own-check";
import { cautions } from "@/lib/evidence/cautions";
import { neededCautions } from "@/lib/evidence/own-check";
import { stateAgainstMode, unitBelongs, usualUnit } from "./modes-and-units";
import { makesLaterSafe, safetyTier } from "./safety-tier";
import { checkOfStep, type Sheet, type SheetStep } from "./sheet";
import { named, type SheetProblem } from "./sheet-document";
import { lostEnds } from "./sheet-ends";

/** Every problem of the sheet, in the order of its steps; `shipped` is the sheet that it came from. */
export function sheetProblems(sheet: Sheet, shipped: Sheet): readonly SheetProblem[] {
  const ofSteps = sheet.steps.flatMap((step, place) =>
    [...ownProblems(step.own), ...branchProblems(step, sheet)].map((text): SheetProblem => {
      return { step: place, sentence: `${named(place, nameOf(step))} ${text}` };
    }),
  );
  const missing = shipped.steps.filter(({ check }) => !sheet.steps.some((step) => step.check === check));
  const ofWhole = missing.map(
    (step): SheetProblem => ({
      step: undefined,
      sentence: `The rules of evidence ask for ${nameOf(step)}: it cannot be left out.`,
    }),
  );
  const problems = [...ofWhole, ...ofSteps];
  // Whether every finding can still be reached is asked of a sheet that is in order otherwise.
  return problems.length > 0 ? problems : lostEnds(sheet, shipped).map((sentence) => ({ step: undefined, sentence }));
}

/** The order in which steps are asked, whatever the sheet's own: by tier of safety, then by the sheet. */
export function askedOrder(steps: readonly SheetStep[]): readonly SheetStep[] {
  return steps
    .map((step, place) => ({ step, place }))
    .sort((a, b) => tierOf(a.step) - tierOf(b.step) || a.place - b.place)
    .map(({ step }) => step);
}

function tierOf(step: SheetStep): number {
  const check = checkOfStep(step);
  return check === undefined ? Number.POSITIVE_INFINITY : safetyTier(check);
}

function nameOf(step: SheetStep): string {
  return checkOfStep(step)?.name ?? step.check;
}

function ownProblems(own: OwnCheck | undefined): readonly string[] {
  if (own === undefined) return [];
  const { power, mode, unit, low, high, source, words } = own;
  const against = stateAgainstMode(power, mode);
  const lacking = neededCautions(power).filter((key) => !own.cautions.includes(key));
  const isMeasured = usualUnit(mode) !== undefined;
  return [
    ...(against === undefined ? [] : [`${against}.`]),
    ...lacking.map(
      (key) =>
        `a check in this state needs its caution “${cautions[key].text}” Tick it: ${power === "live" ? "no live step is shown without it" : "it belongs to the state"}.`,
    ),
    ...(unitBelongs(unit, mode) ? [] : [unitSentence(unit, mode)]),
    ...(low !== undefined && high !== undefined && low > high
      ? [`the lower end of its range, ${low}, is over the upper end, ${high}. Correct whichever is wrong.`]
      : []),
    ...(isMeasured && low === undefined && high === undefined
      ? ["a measurement needs a range, of which one end may stay open. Type what the sheet of the machine prints."]
      : []),
    ...(isMeasured && source === "" ? ["its range needs a source: where is it printed, or who says so?"] : []),
    ...(!isMeasured && words.length < 2
      ? ["what is looked at needs at least two words that may be found, one for a good result."]
      : []),
    ...(words.length > 0 && !words.some(({ state }) => state === "good")
      ? ["none of its words says that all is well. Mark one of them as good."]
      : []),
    ...(isMeasured && words.length > 0 ? ["a measurement has a number, no words. Take the words off."] : []),
    ...(new Set(words.map(({ word }) => word.toLowerCase())).size < words.length
      ? ["two of its words are the same."]
      : []),
  ];
}

function unitSentence(unit: string | undefined, mode: OwnCheck["mode"]): string {
  const usual = usualUnit(mode);
  if (usual === undefined)
    return `nothing is measured by eye, so the unit “${unit}” does not belong to it. Leave the unit blank.`;
  return unit === undefined
    ? `its unit is missing; this meter reads in ${usual}.`
    : `the unit “${unit}” does not belong to this meter, which reads in ${usual}.`;
}

function branchProblems({ check, after }: SheetStep, { steps }: Sheet): readonly string[] {
  if (after === undefined) return [];
  const order = askedOrder(steps);
  const step = order.findIndex((each) => each.check === check);
  const at = order.findIndex((each) => each.check === after.check);
  const waited = order[at];
  if (makesLaterSafe(check))
    return ["it makes later steps safe, so it is always asked and cannot wait for another check."];
  if (waited === undefined) return [`it waits for “${after.check}”, which is not on this sheet. Choose another check.`];
  if (at === step) return ["it waits for itself. Choose another check, or none."];
  const name = nameOf(waited);
  if (at > step)
    return [
      tierOf(waited) > tierOf(order[step] ?? waited)
        ? `it waits for ${name}, which is asked after it: steps with the power off come before powered ones, whatever their order here. Choose an earlier check.`
        : `it waits for ${name}, which is asked after it. Put ${name} earlier, or choose an earlier check.`,
    ];
  if (typeof after.came === "string") return [];
  const known = checkOfStep(waited)?.findings ?? {};
  return Object.hasOwn(known, after.came.word)
    ? []
    : [`it waits for the word “${after.came.word}”, which ${name} does not have. Choose one of its words.`];
}
