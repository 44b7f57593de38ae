// The company's own components, one a row.
import { z } from "zod";
import { optional, required } from "./cell";
import { catalogueKey, catalogueKeys, shortText } from "./cell-texts";
import type { IntakeSetting } from "./intake-setting";
import type { CellProblem, Parsed } from "./parsed";
import { type Cells, readRow } from "./row-problems";

export const componentRow = z.object({
  component: required(catalogueKey, "Key by which jobs name it."),
  name: required(shortText, "What people call it."),
  part_of: optional(catalogueKey, "Key of the larger component that it belongs to."),
  product_types: required(
    catalogueKeys,
    "Keys of the kinds of appliance that have it, separated by spaces; kinds on file are kept.",
  ),
});

export interface ComponentRow {
  readonly component: string;
  readonly name: string;
  readonly partOf: string | undefined;
  readonly productTypes: readonly string[];
}

/** One row of components.csv in; one component, or every problem of the row, out. */
export function parseComponentRow(cells: Cells, setting: IntakeSetting): Parsed<ComponentRow> {
  const { catalogue } = setting;
  return readRow(componentRow, cells, setting, {
    words: [],
    contradictions: (row) => [
      ...row.product_types
        .filter((type) => !catalogue.productTypes.has(type))
        .map((type) => unknownType(type, catalogue.productTypes)),
      ...(row.part_of === row.component ? [partOfItself(row.component)] : []),
    ],
    value: (row) => ({
      component: row.component,
      name: row.name,
      partOf: row.part_of,
      productTypes: row.product_types,
    }),
  });
}

function unknownType(value: string, known: ReadonlySet<string>): CellProblem {
  return {
    column: "product_types",
    value,
    problem: "is not a kind of appliance",
    fix: `Use: ${[...known].join(", ")}.`,
  };
}

function partOfItself(value: string): CellProblem {
  return {
    column: "part_of",
    value,
    problem: "names the component itself",
    fix: "Name the larger component, or leave it blank.",
  };
}
