// What one reading proves, if anything. The rules are the trade's reading rules: resistance with power on or in circuit
// proves nothing, a sensor without its temperature neither, zero volts only where something was commanded to send them.
import type { ProductType } from "@/lib/domain/product-type";
import type { ExpectedRange, Reading } from "@/lib/domain/reading";
import type { Check, Finding } from "./check";
import { type JudgedRange, possibleRanges } from "./expected-range";
import { checkOfReading } from "./own-check";
import { inUnit } from "./units";

export type Judgement =
  | { readonly kind: "proves_nothing"; readonly rule: ReadingRule; readonly why: string }
  | { readonly kind: "finding"; readonly word: string; readonly finding: Finding }
  | { readonly kind: "code"; readonly code: string }
  | { readonly kind: "inside"; readonly value: number; readonly range: JudgedRange }
  /** `by` is the distance to the nearer end, in the range's unit. */
  | { readonly kind: "below"; readonly value: number; readonly by: number; readonly range: JudgedRange }
  | { readonly kind: "above"; readonly value: number; readonly by: number; readonly range: JudgedRange }
  /** OL and short are states, not numbers; `good` where the part should read so (insulation open, contact closed). */
  | { readonly kind: "open"; readonly good: boolean; readonly range: JudgedRange | undefined }
  | { readonly kind: "short"; readonly good: boolean; readonly range: JudgedRange | undefined };

const readingRules = {
  unknown_check: "The catalogue has no check of this name.",
  unknown_word: "The word is not in the check's list.",
  no_reading: "No reading was taken.",
  wrong_mode: "The meter was in another mode than the check needs.",
  wrong_unit: "The unit does not measure what the check measures.",
  power_on: "Resistance with power on proves nothing.",
  power_off: "A live value read with the power off proves nothing.",
  in_circuit: "Resistance with the part still connected proves nothing.",
  isolation_not_stated: "Nobody said whether the part was disconnected; without that, resistance proves nothing.",
  no_temperature: "A sensor's resistance without its temperature proves nothing.",
  too_warm: "Read too warm: the part is open by design at that temperature.",
  load_off: "A voltage read without its load proves nothing: leakage reads as false voltage.",
  load_not_stated: "Nobody said whether the load was connected; without that, a voltage proves nothing.",
  not_commanded: "Low or no voltage proves nothing unless the step was commanded.",
  interlocks_not_shown: "Low or no voltage proves nothing unless the interlocks are shown to pass.",
  igniter_ohms: "An oven igniter's ohms prove nothing: its current is the test.",
  part_not_stated:
    "This model came with one of several parts, each with a range of its own, and which is fitted decides; note it with the reading.",
  no_range: "No range is known for this model, part or temperature; note the sheet's range with the reading.",
} as const;
export type ReadingRule = keyof typeof readingRules;

/** What the other readings and the model give. */
export interface JudgingContext {
  readonly ranges: readonly ExpectedRange[];
  readonly productType: ProductType | undefined;
  readonly interlocks: "pass" | "fail" | "not_read";
  /** From the drain_command check; a reading's own flag comes first. */
  readonly commanded: boolean | undefined;
}

export function judgeReading(reading: Reading, context: JudgingContext): Judgement {
  const check = checkOfReading(reading);
  if (check === undefined) return nothing("unknown_check");
  const { outcome } = reading;
  switch (outcome.kind) {
    case "no_reading":
      return nothing("no_reading");
    case "finding":
      return judgeWord(outcome.word, check);
    case "code":
      return check.modes.includes("fault_code") || check.modes.includes("observation")
        ? { kind: "code", code: outcome.code }
        : nothing("wrong_mode");
    case "open":
    case "short":
    case "number":
      return judgeMeasurement(reading, check, context);
  }
}

function judgeWord(word: string, check: Check): Judgement {
  const finding = Object.hasOwn(check.findings, word) ? check.findings[word] : undefined;
  return finding === undefined ? nothing("unknown_word") : { kind: "finding", word, finding };
}

function judgeMeasurement(reading: Reading, check: Check, context: JudgingContext): Judgement {
  const broken = brokenRule(reading, check);
  if (broken !== undefined) return nothing(broken);
  const [range, ...ofOtherParts] = possibleRanges(reading, check, context);
  const judged = judgeAgainst(range, reading, check, context);
  const isSame = ofOtherParts.every((other) => isAlike(judgeAgainst(other, reading, check, context), judged));
  return isSame ? judged : nothing("part_not_stated");
}

function judgeAgainst(
  range: JudgedRange | undefined,
  reading: Reading,
  check: Check,
  context: JudgingContext,
): Judgement {
  const { outcome } = reading;
  if (outcome.kind === "open")
    return { kind: "open", good: range !== undefined && range.low !== undefined && range.high === undefined, range };
  if (outcome.kind === "short") return { kind: "short", good: range?.low === 0, range };
  if (outcome.kind !== "number") return nothing("no_reading");
  if (check.unit !== undefined && inUnit(outcome.value, outcome.unit, check.unit) === undefined)
    return nothing("wrong_unit");
  if (range === undefined) return check.unit === "oz" ? recorded(outcome.value) : nothing("no_range");
  const value = inUnit(outcome.value, outcome.unit, range.unit);
  if (value === undefined) return nothing("wrong_unit");
  const judged = compare(value, range);
  return judged.kind === "below" ? (unsentRule(reading, check, context) ?? judged) : judged;
}

function isAlike(one: Judgement, other: Judgement): boolean {
  if ("good" in one && "good" in other) return one.kind === other.kind && one.good === other.good;
  return one.kind === other.kind;
}

/** What makes any measurement of this check worthless, whatever it reads. */
function brokenRule(reading: Reading, check: Check): ReadingRule | undefined {
  if (check.key === "oven_igniter_cold") return "igniter_ohms";
  if (!check.modes.includes(reading.mode)) return "wrong_mode";
  const state = reading.outcome.kind;
  const isOhms = reading.mode === "ohm" || reading.mode === "continuity";
  if (state !== "number" && !isOhms) return "wrong_mode";
  if (isOhms && reading.power !== "off") return "power_on";
  if (check.energy === "live" && reading.power === "off") return "power_off";
  if (check.needs.includes("isolated") && reading.isolated !== true) {
    return reading.isolated === false ? "in_circuit" : "isolation_not_stated";
  }
  // An open or shorted sensor is failed at any temperature.
  if (
    check.needs.includes("temperature") &&
    reading.temperatureC === undefined &&
    (state === "number" || check.modes.includes("continuity"))
  ) {
    return "no_temperature";
  }
  if (check.notAboveC !== undefined && reading.temperatureC !== undefined && reading.temperatureC > check.notAboveC)
    return "too_warm";
  if (check.needs.includes("load") && reading.loadConnected !== true) {
    return reading.loadConnected === false ? "load_off" : "load_not_stated";
  }
  return undefined;
}

/** Zero or low volts say something about the sender only if it had reason to send. */
function unsentRule(reading: Reading, check: Check, context: JudgingContext): Judgement | undefined {
  if (check.needs.includes("command") && (reading.commanded ?? context.commanded) !== true)
    return nothing("not_commanded");
  if (check.needs.includes("interlocks") && context.interlocks !== "pass") return nothing("interlocks_not_shown");
  return undefined;
}

function compare(value: number, range: JudgedRange): Judgement {
  if (range.low !== undefined && value < range.low) return { kind: "below", value, by: range.low - value, range };
  if (range.high !== undefined && value > range.high) return { kind: "above", value, by: value - range.high, range };
  return { kind: "inside", value, range };
}

/** A weight that is only recorded has no range to meet. */
function recorded(value: number): Judgement {
  return {
    kind: "inside",
    value,
    range: {
      low: 0,
      high: undefined,
      unit: "oz",
      basis: "general",
      screensOnly: false,
      condemnsBelow: undefined,
      source: "weighed",
      mark: "law",
    },
  };
}

function nothing(rule: ReadingRule): Judgement {
  return { kind: "proves_nothing", rule, why: readingRules[rule] };
}
