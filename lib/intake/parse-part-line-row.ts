// Parts on a job's invoice, one line a row.
import { z } from "zod";
import { type PartLine, partRoles } from "@/lib/domain/job";
import { currencies } from "@/lib/domain/money";
import { optional, required, withDefault } from "./cell";
import { dayCell } from "./cell-days";
import { amount, wholeNumber } from "./cell-numbers";
import { catalogueKey, identifier, note, oneOf, shortText } from "./cell-texts";
import type { IntakeSetting } from "./intake-setting";
import type { Parsed } from "./parsed";
import { type Cells, futureDays, readRow, unknownWords } from "./row-problems";

export const partLineRow = z.object({
  job_number: required(identifier, "Number of a job that is on file."),
  line: required(wholeNumber({ least: 1 }), "Number of the line on the job, from 1."),
  part_number: required(identifier, "Part number, as on the label or invoice."),
  description: optional(note, "What the part is."),
  component: optional(catalogueKey, "Key of the component that the part belongs to."),
  role: withDefault(oneOf(partRoles), "fitted", "Fitted part, core charge, or freight."),
  quantity: withDefault(wholeNumber({ least: 1 }), 1, "How many."),
  unit_cost: required(amount, "Cost of one, as invoiced by the distributor."),
  currency: optional(oneOf(currencies), "Currency of the cost; the company's own where blank."),
  distributor: optional(shortText, "Who sold the part."),
  invoice_number: optional(identifier, "The distributor's invoice."),
  invoice_line: optional(shortText, "Line on that invoice."),
  invoiced_on: optional(dayCell, "Day of that invoice."),
});

export interface PartLineRow {
  readonly jobNumber: string;
  readonly line: PartLine;
}

/** A line that nobody numbered; what stands for its number is of no use to anybody. */
const unnumberedRow = partLineRow.extend({ line: withDefault(wholeNumber({ least: 1 }), 1, "None.") });

/** One row of part-lines.csv in; one part line, or every problem of the row, out. A table may leave the number of the line to storage. */
export function parsePartLineRow(
  cells: Cells,
  setting: IntakeSetting,
  { numbered }: { readonly numbered: boolean } = { numbered: true },
): Parsed<PartLineRow> {
  return readRow(numbered ? partLineRow : unnumberedRow, cells, setting, {
    words: [
      ...unknownWords(cells, [{ column: "component", words: setting.catalogue.components, noun: "component" }]),
      ...futureDays(cells, ["invoiced_on"], setting),
    ],
    contradictions: none,
    value: partLineOf,
  });
}

function none() {
  return [];
}

function partLineOf(row: z.output<typeof partLineRow>, setting: IntakeSetting): PartLineRow {
  const line: PartLine = {
    line: row.line,
    partNumber: row.part_number,
    description: row.description ?? "",
    component: row.component,
    role: row.role,
    quantity: row.quantity,
    unitCost: { cents: row.unit_cost, currency: row.currency ?? setting.currency },
    distributor: row.distributor,
    invoiceNumber: row.invoice_number,
    invoiceLine: row.invoice_line,
    invoicedOn: row.invoiced_on,
  };
  return { jobNumber: row.job_number, line };
}
