import { day } from "@/lib/calendar/day";
import { components } from "@/lib/domain/components";
import { failureModes } from "@/lib/domain/failure-modes";
import { productTypeKeys } from "@/lib/domain/product-type";
import { symptoms } from "@/lib/domain/symptoms";
import type { IntakeSetting } from "@/lib/intake/intake-setting";
import { guessMatching, type MatchingGuess } from "@/lib/intake/matching/guess-matching";
import type { Matching } from "@/lib/intake/matching/matching";
import { type TranslationSetting, translator } from "@/lib/intake/matching/translate-row";
import type { Translation } from "@/lib/intake/matching/translation";
import type { CellMark, SourceRow } from "@/lib/intake/tables/source-row";

/** The whole catalogue as it is delivered. */
export const setting: IntakeSetting = {
  catalogue: {
    productTypes: new Set<string>(productTypeKeys),
    components: new Set(components.map(({ key }) => key)),
    symptoms: new Set(symptoms.map(({ key }) => key)),
    failureModes: new Set(failureModes.map(({ key }) => key)),
    checks: new Map(),
  },
  currency: "USD",
  today: day("2025-06-30"),
};

/** Rows of cells as a table has them; the header is row 1. */
export function sourceRows(rows: readonly (readonly string[])[]): readonly SourceRow[] {
  return rows.map((cells, index) => ({ row: index + 2, cells }));
}

export function guess(
  header: readonly string[],
  rows: readonly (readonly string[])[],
  more: object = {},
): MatchingGuess {
  return guessMatching(
    { header, rows: sourceRows(rows) },
    { catalogue: setting.catalogue, today: setting.today, ...more },
  );
}

const plain: Matching = {
  kind: "jobs",
  rowIs: "one record",
  columns: [],
  dateOrder: "month first",
  decimalMark: ".",
  labourUnit: "minutes",
  words: {},
  constants: {},
};

/** One row of jobs, given by target column, through a matching that names each column like its target. */
export function translated(
  cells: Readonly<Record<string, string>>,
  more: {
    readonly matching?: Partial<Matching>;
    readonly setting?: Partial<TranslationSetting>;
    readonly mark?: CellMark;
    readonly merged?: ReadonlyMap<number, string>;
  } = {},
): Translation {
  const header = Object.keys(cells);
  const columns = header.map((target) => ({ source: `Their ${target}`, target }));
  const translate = translator({ ...plain, columns, ...more.matching }, header, { ...setting, ...more.setting });
  const values = Object.values(cells);
  return translate({
    row: 2,
    cells: values,
    ...(more.mark !== undefined && { marks: new Map([[values.length - 1, more.mark]]) }),
    ...(more.merged !== undefined && { merged: more.merged }),
  });
}
