import type { ExpectedRange } from "@/lib/domain/reading";
import type { Check } from "@/lib/evidence/check";
import { partReference } from "@/lib/evidence/part-ranges";
import { inUnit } from "@/lib/evidence/units";
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";
import { typedValue } from "@/lib/sheets/typed-value";
import type { ReadingDraft } from "./reading-draft";

type Ends = Pick<ReadingDraft, "unit" | "sheetLow" | "sheetHigh">;

/** The range that was noted with the last reading of the same check, as one begins with it: the sheet and the part stay the same. */
export function notedBefore(check: Check, answers: readonly SheetAnswer[]): Partial<ReadingDraft> {
  const last = answers.findLast((answer) => answer.check === check.key && answer.given.kind === "reading")?.given;
  if (last?.kind !== "reading" || (last.sheetLow === undefined && last.sheetHigh === undefined)) return {};
  return {
    unit: last.outcome.kind === "number" ? last.outcome.unit : (check.unit ?? ""),
    sheetLow: endText(last.sheetLow),
    sheetHigh: endText(last.sheetHigh),
    sheetReference: last.sheetReference ?? "",
  };
}

/** The draft in another unit; the ends of a range that was noted keep what they mean. */
export function inOtherUnit(draft: ReadingDraft, unit: string): Ends {
  const end = (text: string) => {
    const typed = typedValue(text);
    const there = typed.kind === "value" ? inUnit(typed.value, draft.unit, unit) : undefined;
    return there === undefined ? text : endText(there);
  };
  return { unit, sheetLow: end(draft.sheetLow), sheetHigh: end(draft.sheetHigh) };
}

/** The range of the part that is fitted, in the unit that the reading is typed in. */
export function withRange(draft: ReadingDraft, range: ExpectedRange): Partial<ReadingDraft> {
  const ofRange = { ...draft, unit: range.unit, sheetLow: endText(range.low), sheetHigh: endText(range.high) };
  const unit = inUnit(1, range.unit, draft.unit) === undefined ? range.unit : draft.unit;
  return { ...inOtherUnit(ofRange, unit), sheetReference: partReference(range) };
}

function endText(end: number | undefined): string {
  return end === undefined ? "" : digits.format(end);
}

/** Twelve digits and no power of ten: conversions leave no tail such as 0.012000000000000002, and it is read as if it were typed. */
const digits = new Intl.NumberFormat("en-US", { maximumSignificantDigits: 12, useGrouping: false });
