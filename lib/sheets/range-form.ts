import { type ExpectedRange, type SourceMark, sourceMarks } from "@/lib/domain/reading";
import type { Check } from "@/lib/evidence/check";
import { temperatureIn } from "@/lib/evidence/temperature-in";
import { inUnit } from "@/lib/evidence/units";
import { typedValue } from "./typed-value";

/** What is typed for one range, by field. */
export interface RangeTexts {
  readonly low: string;
  readonly high: string;
  readonly unit: string;
  readonly condition: string;
  readonly source: string;
  readonly mark: string;
}

export type ParsedRange =
  | { readonly ok: true; readonly range: ExpectedRange }
  | { readonly ok: false; readonly problems: readonly { readonly field: keyof RangeTexts; readonly text: string }[] };

/** The range of a check on a model; or every problem, by its field. */
export function parseRangeForm(texts: RangeTexts, check: Check): ParsedRange {
  const low = endOf(texts.low);
  const high = endOf(texts.high);
  const unit = texts.unit.trim();
  const condition = texts.condition.trim();
  const source = texts.source.trim();
  const mark = sourceMarks.find((each) => each === texts.mark);
  const problems = [
    ...problem("low", low.sentence),
    ...problem("high", high.sentence),
    ...endProblems(low.value, high.value, texts),
    ...problem("unit", unitProblem(unit, check)),
    ...problem("condition", conditionProblem(condition, check)),
    ...problem(
      "source",
      source === "" ? "The source is blank. Write where the range is printed, or who says so." : undefined,
    ),
    ...problem("mark", mark === undefined ? "Choose how far the source carries." : undefined),
  ];
  if (problems.length > 0 || mark === undefined) return { ok: false, problems };
  return { ok: true, range: rangeOf(check.key, { low: low.value, high: high.value, unit, condition, source, mark }) };
}

function rangeOf(
  check: string,
  {
    condition,
    ...rest
  }: Omit<ExpectedRange, "check" | "condition"> & { readonly condition: string; readonly mark: SourceMark },
): ExpectedRange {
  return { check, condition: condition === "" ? undefined : condition, ...rest };
}

function endOf(text: string): { readonly value: number | undefined; readonly sentence: string | undefined } {
  const read = typedValue(text);
  if (read.kind === "value") return { value: read.value, sentence: undefined };
  return { value: undefined, sentence: read.kind === "unclear" ? read.sentence : undefined };
}

function endProblems(low: number | undefined, high: number | undefined, texts: RangeTexts) {
  if (low !== undefined && high !== undefined && low > high)
    return problem("low", `The lower end, ${low}, is over the upper end, ${high}. Correct whichever is wrong.`);
  const isBlank = texts.low.trim() === "" && texts.high.trim() === "";
  return problem("low", isBlank ? "Both ends are blank. Type at least one." : undefined);
}

function unitProblem(unit: string, { unit: own, name }: Check): string | undefined {
  if (own === undefined) return `${name} is not measured, so it has no range.`;
  if (unit === "") return `The unit is blank. ${name} is measured in ${own}.`;
  return inUnit(1, unit, own) === undefined
    ? `The unit “${unit}” does not measure what ${name} measures, which is in ${own}.`
    : undefined;
}

function conditionProblem(condition: string, { needs, modes, name }: Check): string | undefined {
  if (condition.length > 200) return "Longer than 200 characters.";
  const isSensor = needs.includes("temperature") && !modes.includes("continuity");
  return isSensor && temperatureIn(condition) === undefined
    ? `${name} changes with temperature. Write at which one the range holds, such as at 25 °C.`
    : undefined;
}

function problem(field: keyof RangeTexts, text: string | undefined) {
  return text === undefined ? [] : [{ field, text }];
}
