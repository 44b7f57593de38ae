// Expected range of one check on one model, one a row.
import { z } from "zod";
import { type ExpectedRange, sourceMarks } from "@/lib/domain/reading";
import { optional, required } from "./cell";
import { decimalNumber } from "./cell-numbers";
import { catalogueKey, identifier, oneOf, shortText } from "./cell-texts";
import type { IntakeSetting } from "./intake-setting";
import type { CellProblem, Parsed } from "./parsed";
import { type Cells, readRow, unknownWords } from "./row-problems";

export const rangeRow = z.object({
  maker: required(shortText, "Maker of a model that is on file."),
  model: required(identifier, "Model number."),
  check: required(catalogueKey, "Key of the check."),
  low: optional(decimalNumber, "Lowest good value; blank where there is no lower end."),
  high: optional(decimalNumber, "Highest good value; blank where there is no upper end."),
  unit: required(shortText, "Unit of both."),
  condition: optional(shortText, "When the range holds, such as at 25 C."),
  source: required(shortText, "Where the range is printed."),
  mark: required(oneOf(sourceMarks), "How far the source carries."),
});

export interface RangeRow {
  readonly maker: string;
  readonly model: string;
  readonly range: ExpectedRange;
}

/** One row of ranges.csv in; one range, or every problem of the row, out. */
export function parseRangeRow(cells: Cells, setting: IntakeSetting): Parsed<RangeRow> {
  return readRow(rangeRow, cells, setting, {
    words: unknownWords(cells, [{ column: "check", words: setting.catalogue.checks, noun: "check" }]),
    contradictions: endsInOrder,
    value: ({ maker, model, ...range }) => ({ maker, model, range: { ...range, condition: range.condition } }),
  });
}

function endsInOrder({ low, high }: z.output<typeof rangeRow>): readonly CellProblem[] {
  if (low === undefined && high === undefined)
    return [
      { column: "low", value: "", problem: "is blank, and so is high", fix: "Write at least one end of the range." },
    ];
  if (low !== undefined && high !== undefined && low > high)
    return [
      {
        column: "high",
        value: String(high),
        problem: `is below low, which is ${low}`,
        fix: "Correct whichever of the two is wrong.",
      },
    ];
  return [];
}
