// A model may have come with one of several parts, each with a range of its own. Which is fitted is seen at the machine and
// noted with the reading, together with where its range is printed and how far that carries.
import { type ExpectedRange, type SourceMark, sourceMarks } from "@/lib/domain/reading";
import type { Check } from "./check";
import { temperatureIn } from "./temperature-in";

/** Ranges between which the fitted part decides; empty where the model has one, or only such as hold at a temperature. */
export function partRanges(check: Check, ranges: readonly ExpectedRange[]): readonly ExpectedRange[] {
  const own = ranges.filter((range) => range.check === check.key && temperatureIn(range.condition) === undefined);
  return own.length > 1 ? own : [];
}

/** What is noted with the reading: the part, where its range is printed, and the mark. */
export function partReference({ condition, source, mark }: ExpectedRange): string {
  const end = ` (${mark})`;
  return `${condition ?? "as the model came"}: ${source}`.slice(0, longestReference - end.length) + end;
}

/** Source and mark of a range that was noted with a reading. What somebody copied from a sheet ends with no mark: it is published there. */
export function readReference(reference: string): { readonly source: string; readonly mark: SourceMark } {
  const mark = sourceMarks.find((each) => reference.endsWith(` (${each})`));
  if (mark === undefined) return { source: reference, mark: "published" };
  return { source: reference.slice(0, -` (${mark})`.length), mark };
}

/** As many characters as the record takes. */
const longestReference = 200;
