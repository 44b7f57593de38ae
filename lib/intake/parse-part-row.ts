// Parts and their prices, one part a row.
import { z } from "zod";
import type { Day } from "@/lib/calendar/day";
import { type Currency, currencies, type Money } from "@/lib/domain/money";
import { normalised } from "@/lib/domain/normalised";
import { optional, required } from "./cell";
import { dayCell } from "./cell-days";
import { amount } from "./cell-numbers";
import { catalogueKey, identifier, note, oneOf, shortText } from "./cell-texts";
import type { IntakeSetting } from "./intake-setting";
import type { CellProblem, Parsed } from "./parsed";
import { type Cells, readRow, unknownWords } from "./row-problems";

export const partRow = z.object({
  part_number: required(identifier, "Part number, as on the label or in the price list."),
  description: optional(note, "What the part is."),
  component: optional(catalogueKey, "Key of the component that the part belongs to."),
  maker: optional(shortText, "Whose number it is; blank where it is the company's own or nobody said."),
  list_price: optional(amount, "Price of one, as listed for the end customer."),
  cost: optional(amount, "What one costs the company."),
  currency: optional(oneOf(currencies), "Currency of the amounts; the company's own where blank."),
  replaces: optional(identifier, "Older part number that this one stands in for."),
  superseded_by: optional(identifier, "Newer part number that stands in for this one."),
  effective_on: optional(dayCell, "Day from which price and succession hold."),
});

export interface PartRow {
  readonly partNumber: string;
  readonly description: string;
  readonly component: string | undefined;
  readonly maker: string | undefined;
  readonly listPrice: Money | undefined;
  readonly cost: Money | undefined;
  /** The row's, or else the company's. */
  readonly currency: Currency;
  readonly replaces: string | undefined;
  readonly supersededBy: string | undefined;
  readonly effectiveOn: Day | undefined;
}

/** One row of parts.csv in; one part with its price, or every problem of the row, out. */
export function parsePartRow(cells: Cells, setting: IntakeSetting): Parsed<PartRow> {
  return readRow(partRow, cells, setting, {
    words: unknownWords(cells, [{ column: "component", words: setting.catalogue.components, noun: "component" }]),
    contradictions: (row) => [...namesItself(row, "replaces"), ...namesItself(row, "superseded_by"), ...circle(row)],
    value: (row) => {
      const currency = row.currency ?? setting.currency;
      const money = (cents: number | undefined) => (cents === undefined ? undefined : { cents, currency });
      return {
        partNumber: row.part_number,
        description: row.description ?? "",
        component: row.component,
        maker: row.maker,
        listPrice: money(row.list_price),
        cost: money(row.cost),
        currency,
        replaces: row.replaces,
        supersededBy: row.superseded_by,
        effectiveOn: row.effective_on,
      };
    },
  });
}

type Row = z.output<typeof partRow>;

function namesItself(row: Row, column: "replaces" | "superseded_by"): readonly CellProblem[] {
  const other = row[column];
  if (other === undefined || normalised(other) !== normalised(row.part_number)) return [];
  return [{ column, value: other, problem: "names the part itself", fix: "Name the other part, or leave it blank." }];
}

function circle({ replaces, superseded_by: next }: Row): readonly CellProblem[] {
  if (replaces === undefined || next === undefined || normalised(replaces) !== normalised(next)) return [];
  return [
    {
      column: "superseded_by",
      value: next,
      problem: "is also the part that this one replaces",
      fix: "Look up which of the two is newer, and leave the other blank.",
    },
  ];
}
