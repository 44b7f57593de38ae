import type { JudgedRange } from "@/lib/evidence/expected-range";
import type { Judgement } from "@/lib/evidence/judge-reading";
import { formatOutcome } from "@/lib/format/format-reading";
import type { SheetReading } from "@/lib/sheets/sheet-answer";
import { pointSlip, unitSlip } from "@/lib/sheets/unit-slip";

/** What is asked back before a reading is kept. Whatever is answered, the reading can be kept as it is. */
export type Question = {
  readonly taken: SheetReading;
  readonly range: JudgedRange | undefined;
} & (
  | { readonly kind: "unit"; readonly unit: string; readonly text: string; readonly words: string }
  | { readonly kind: "point"; readonly text: string; readonly words: string }
  | { readonly kind: "outside" }
  | { readonly kind: "proves nothing"; readonly why: string }
);

interface Asked {
  readonly taken: SheetReading;
  readonly judgement: Judgement | undefined;
  readonly range: JudgedRange | undefined;
  /** The technician has already been asked about digits and unit. */
  readonly isSure: boolean;
}

type WithoutTaken<Each> = Each extends unknown ? Omit<Each, "taken"> : never;

/** Undefined where the reading may be kept at once: inside its range, or a word, or a code. */
export function askAbout({ taken, judgement, range, isSure }: Asked): WithoutTaken<Question> | undefined {
  const { outcome } = taken;
  if (outcome.kind === "number" && range !== undefined && !isSure) {
    const unit = unitSlip(outcome, range)?.unit;
    const text = String(outcome.value);
    if (unit !== undefined) return { kind: "unit", range, unit, text, words: formatOutcome({ ...outcome, unit }) };
    const value = pointSlip(outcome, range);
    if (value !== undefined)
      return { kind: "point", range, text: String(value), words: formatOutcome({ ...outcome, value }) };
  }
  if (judgement === undefined) return undefined;
  if (judgement.kind === "proves_nothing" && judgement.rule !== "no_reading")
    return { kind: "proves nothing", range, why: judgement.why };
  if (judgement.kind === "below" || judgement.kind === "above") return { kind: "outside", range: judgement.range };
  return undefined;
}
