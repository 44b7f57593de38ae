// A condition over the judged readings of one job: the rules of an entry are built from these, so that code evaluates
// them and a person can read them.

import type { JudgedReading } from "./current-readings";
import { isAbsent, isBad, isDecided, isGood } from "./decided";
import type { Judgement, ReadingRule } from "./judge-reading";

export type Condition =
  /** An observation used one of these words. */
  | { readonly is: "word"; readonly check: string; readonly words: readonly string[] }
  /** Every deciding reading of the check is good, and there is one. */
  | { readonly is: "good"; readonly check: string }
  /** At least one deciding reading of the check is not as it should be. */
  | { readonly is: "bad"; readonly check: string }
  /** No or far too little voltage, proven. */
  | { readonly is: "absent"; readonly check: string }
  | { readonly is: "open"; readonly check: string }
  /** The check was done and decided something. */
  | { readonly is: "decided"; readonly check: string }
  /** There is a reading of the check, whatever it is worth. */
  | { readonly is: "taken"; readonly check: string }
  /** The check has only readings that prove nothing, one of them by these rules. */
  | { readonly is: "worthless"; readonly check: string; readonly rules: readonly ReadingRule[] }
  /** The temperature stands beside the ohms. */
  | { readonly is: "with_temperature"; readonly check: string }
  /** Three readings of the check, whatever they read. */
  | { readonly is: "three"; readonly check: string }
  /** Windings of one motor, three pairs or more. */
  | { readonly is: "unequal"; readonly check: string }
  | { readonly is: "equal"; readonly check: string }
  /** Three pairs of a split-phase winding: the largest is, or is not, the sum of the others. */
  | { readonly is: "sum_fails"; readonly check: string }
  | { readonly is: "sum_holds"; readonly check: string }
  | { readonly is: "all"; readonly of: readonly Condition[] }
  | { readonly is: "any"; readonly of: readonly Condition[] }
  | { readonly is: "not"; readonly of: Condition }
  /** Decided by the policy's wording or the job's own cause, not by a reading. */
  | { readonly is: "by_policy" };

/** Numbers of the readings that make the condition hold, or undefined where it does not. */
export function holds(condition: Condition, current: readonly JudgedReading[]): readonly number[] | undefined {
  switch (condition.is) {
    case "all":
      return everyOf(condition.of.map((part) => holds(part, current)));
    case "any":
      return condition.of.map((part) => holds(part, current)).find((numbers) => numbers !== undefined);
    case "not":
      return holds(condition.of, current) === undefined ? [] : undefined;
    case "by_policy":
      return undefined;
    default:
      return ofCheck(
        condition,
        current.filter(({ reading }) => reading.check === condition.check),
      );
  }
}

type CheckCondition = Extract<Condition, { readonly check: string }>;

function ofCheck(condition: CheckCondition, own: readonly JudgedReading[]): readonly number[] | undefined {
  const decided = own.filter(({ judgement }) => isDecided(judgement));
  switch (condition.is) {
    case "word":
      return found(
        own.filter(({ judgement }) => judgement.kind === "finding" && condition.words.includes(judgement.word)),
      );
    case "good":
      return decided.every(({ judgement }) => isGood(judgement)) ? found(decided) : undefined;
    case "bad":
      return found(decided.filter(({ judgement }) => isBad(judgement)));
    case "absent":
      return found(decided.filter(({ judgement }) => isAbsent(judgement)));
    case "open":
      return found(own.filter(({ judgement }) => judgement.kind === "open"));
    case "decided":
      return found(decided);
    case "taken":
      return found(own);
    case "worthless":
      return decided.length > 0
        ? undefined
        : found(
            own.filter(
              ({ judgement }) => judgement.kind === "proves_nothing" && condition.rules.includes(judgement.rule),
            ),
          );
    case "with_temperature":
      return found(own.filter(({ reading }) => reading.temperatureC !== undefined));
    case "three":
      return own.filter(({ judgement }) => judgement.kind !== "proves_nothing").length >= 3 ? found(own) : undefined;
    case "unequal":
    case "equal":
      return spreadOf(own) === condition.is ? found(measuredOf(own)) : undefined;
    case "sum_fails":
    case "sum_holds":
      return sumOf(own) === condition.is ? found(measuredOf(own)) : undefined;
  }
}

/** Readings of one winding may differ by this share and still be equal. Common practice, no source. */
const equalWithin = 0.1;

function spreadOf(own: readonly JudgedReading[]): "equal" | "unequal" | undefined {
  const ohms = ohmsOf(own);
  if (ohms.length < 3) return undefined;
  return Math.max(...ohms) <= Math.min(...ohms) * (1 + equalWithin) ? "equal" : "unequal";
}

/** A split-phase winding adds up; the three equal windings of an inverter type pass as well. */
function sumOf(own: readonly JudgedReading[]): "sum_holds" | "sum_fails" | undefined {
  const [first, second, largest] = ohmsOf(own).sort((a, b) => a - b);
  if (first === undefined || second === undefined || largest === undefined) return undefined;
  if (largest <= first * (1 + equalWithin)) return "sum_holds";
  return Math.abs(first + second - largest) <= largest * equalWithin ? "sum_holds" : "sum_fails";
}

function measuredOf(own: readonly JudgedReading[]): readonly JudgedReading[] {
  return own.filter(({ judgement }) => measuredValue(judgement) !== undefined);
}

function ohmsOf(own: readonly JudgedReading[]): number[] {
  return own.flatMap(({ judgement }) => measuredValue(judgement) ?? []);
}

function measuredValue(judgement: Judgement): number | undefined {
  return judgement.kind === "inside" || judgement.kind === "below" || judgement.kind === "above"
    ? judgement.value
    : undefined;
}

function found(entries: readonly JudgedReading[]): readonly number[] | undefined {
  return entries.length === 0 ? undefined : entries.map(({ reading }) => reading.number);
}

function everyOf(parts: readonly (readonly number[] | undefined)[]): readonly number[] | undefined {
  const numbers: number[] = [];
  for (const part of parts) {
    if (part === undefined) return undefined;
    numbers.push(...part);
  }
  return [...new Set(numbers)];
}
