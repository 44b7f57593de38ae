import { describe, expect, test } from "vitest";
import { inOtherUnit, notedBefore, withRange } from "@/app/sheet/_flow/noted-range";
import { emptyDraft, readingOf } from "@/app/sheet/_flow/reading-draft";
import type { ExpectedRange, ReadingOutcome } from "@/lib/domain/reading";
import { checkOf } from "@/lib/evidence/checks";
import { judgeReading } from "@/lib/evidence/judge-reading";
import { partRanges, partReference, readReference } from "@/lib/evidence/part-ranges";
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";

// A model that came with either of two pumps. What a reading shows depends on which is fitted; a shown part decides, as the
// handbook has it that ranges go by model or part.
const found = checkOf("pump_winding");
if (found === undefined) throw new Error("no such check");
const check = found;
const ranges: readonly ExpectedRange[] = [
  { check: check.key, low: 12, high: 18, unit: "ohm", condition: undefined, source: "sheet A", mark: "from memory" },
  { check: check.key, low: 28, high: 34, unit: "ohm", condition: "pump P-2", source: "sheet B", mark: "published" },
];
const [ownRange, otherRange] = ranges;
const draft = { ...emptyDraft(check, undefined), isolated: true };

/** What the phone would keep, judged. @param fitted  the range of the part that is chosen, if any */
function judged(outcome: ReadingOutcome, fitted?: ExpectedRange) {
  const chosen = fitted === undefined ? draft : { ...draft, ...withRange(draft, fitted) };
  const { kind: _, cautionsRead: __, ...taken } = readingOf(chosen, outcome, check, 1);
  const reading = { ...taken, number: 1, check: check.key, own: undefined, note: undefined, technician: undefined };
  return judgeReading(
    { ...reading, takenAt: undefined },
    { ranges, productType: "front_load_washer", interlocks: "not_read", commanded: undefined },
  );
}
const ohms = (value: number): ReadingOutcome => ({ kind: "number", value, unit: "ohm" });

describe("a model that came with one of two parts", () => {
  test("a reading that one part may show and the other not proves nothing until somebody says which is fitted", () => {
    for (const value of [14.6, 30]) expect(judged(ohms(value))).toMatchObject({ rule: "part_not_stated" });
    expect(judged(ohms(30), otherRange)).toMatchObject({ kind: "inside" });
    expect(judged(ohms(30), ownRange)).toMatchObject({ kind: "above", by: 12 });
    expect(judged(ohms(14.6), otherRange)).toMatchObject({ kind: "below" });
  });
  test("what no part may show decides without it", () => {
    expect(judged(ohms(2))).toMatchObject({ kind: "below" });
    expect(judged(ohms(900))).toMatchObject({ kind: "above" });
    expect(judged({ kind: "open" })).toMatchObject({ kind: "open", good: false });
  });
  test("the mark goes with the range of the part, and what is copied from a sheet is published there", () => {
    expect(judged(ohms(15), ownRange)).toMatchObject({
      range: { source: "as the model came: sheet A", mark: "from memory", basis: "noted with the reading" },
    });
    expect(readReference("sheet in the machine, rev. C")).toEqual({
      source: "sheet in the machine, rev. C",
      mark: "published",
    });
  });
  test("a long source is cut and its mark is not", () => {
    for (const range of ranges) {
      const reference = partReference({ ...range, source: "page ".repeat(100) });
      expect(reference.length).toBeLessThanOrEqual(200);
      expect(readReference(reference).mark).toBe(range.mark);
    }
  });
  test("one range, or several that hold at temperatures, are no choice", () => {
    expect(partRanges(check, ranges.slice(0, 1))).toEqual([]);
    expect(
      partRanges(
        check,
        ranges.map((range, at) => ({ ...range, condition: `at ${20 + at} °C` })),
      ),
    ).toEqual([]);
  });
});

describe("the range that is noted with a reading", () => {
  const chosen = { ...draft, ...withRange(draft, { ...ranges[0], low: 12, high: 18.5, unit: "ohm" } as ExpectedRange) };
  test("keeps what it means when the unit is changed, there and back", () => {
    const inKilo = { ...chosen, ...inOtherUnit(chosen, "kohm") };
    expect(inKilo).toMatchObject({ unit: "kohm", sheetLow: "0.012", sheetHigh: "0.0185" });
    expect(inOtherUnit(inKilo, "ohm")).toEqual({ unit: "ohm", sheetLow: "12", sheetHigh: "18.5" });
    expect(inOtherUnit({ ...chosen, sheetLow: "0,5" }, "mohm").sheetLow).toBe("0.0000005");
  });
  test("stands in the check's own unit beside a state of the meter", () => {
    const inKilo = { ...chosen, ...inOtherUnit(chosen, "kohm") };
    expect(readingOf(inKilo, { kind: "open" }, check, 1)).toMatchObject({ sheetLow: 12, sheetHigh: 18.5 });
    expect(readingOf(inKilo, { kind: "number", value: 0.015, unit: "kohm" }, check, 1)).toMatchObject({
      sheetLow: 0.012,
    });
  });
  test("is there again at the next reading of the check, and of no other", () => {
    const given = readingOf(chosen, ohms(15), check, 1);
    const answer: SheetAnswer = { id: "a", sequence: 1, check: check.key, time: 1, given, note: "", at: "" };
    expect(notedBefore(check, [answer])).toEqual({
      unit: "ohm",
      sheetLow: "12",
      sheetHigh: "18.5",
      sheetReference: chosen.sheetReference,
    });
    expect(notedBefore(check, [{ ...answer, check: "pump_voltage" }])).toEqual({});
  });
});
