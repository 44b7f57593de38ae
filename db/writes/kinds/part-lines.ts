import { type PartLineRow, parsePartLineRow } from "@/lib/intake/parse-part-line-row";
import { firstPartLines } from "../bulk/first-part-lines";
import { flagRows } from "../staging/flag-rows";
import { type ReadColumn, type StagedValue, stagedKind } from "../staging/staged-kind";
import { netReturns } from "./net-returns";
import { numberPartLines } from "./number-part-lines";
import {
  checkJobOfRows,
  jobDerived,
  keepJobs,
  resolveFirstRows,
  resolveJobOfRows,
  storedUnderJob,
} from "./rows-of-jobs";
import { noteWords } from "./words-in-use";

const value = (
  name: string,
  type: string,
  read: (row: MaybeNumbered) => StagedValue,
  from = name,
): ReadColumn<MaybeNumbered> => ({
  name,
  type,
  from,
  use: "value",
  value: read,
});

/** A line that the file does not number is numbered by what it says; one of a negative quantity is a return. */
type MaybeNumbered = PartLineRow & { readonly numbered: boolean; readonly returned: boolean };

export const partLinesKind = stagedKind<MaybeNumbered>({
  kind: "part-lines",
  parse(cells, setting) {
    const numbered = cells.line !== undefined;
    const quantity = (cells.quantity ?? "").trim();
    const returned = /^-[1-9]\d*$/.test(quantity);
    const counted = returned ? { ...cells, quantity: quantity.slice(1) } : cells;
    const read = parsePartLineRow(counted, setting, { numbered });
    if (!read.ok) return read;
    const { jobNumber, line } = read.value;
    return { ok: true, value: { jobNumber, line, numbered, returned } };
  },
  columns: [
    { name: "job_number", type: "text", from: "job_number", use: "help", value: (row) => row.jobNumber },
    {
      name: "line",
      type: "integer",
      from: "line",
      use: "once",
      value: ({ line, numbered }) => (numbered ? line.line : undefined),
    },
    { name: "returned", type: "boolean", from: "returned", use: "help", value: ({ returned }) => returned },
    value("part_number", "text", ({ line }) => line.partNumber),
    value("description", "text", ({ line }) => line.description),
    value("component", "text", ({ line }) => line.component),
    value("role", "text", ({ line }) => line.role),
    value("quantity", "integer", ({ line }) => line.quantity),
    value("unit_cost_cents", "bigint", ({ line }) => line.unitCost.cents, "unit_cost"),
    value("currency", "text", ({ line }) => line.unitCost.currency),
    value("distributor", "text", ({ line }) => line.distributor),
    value("invoice_number", "text", ({ line }) => line.invoiceNumber),
    value("invoice_line", "text", ({ line }) => line.invoiceLine),
    value("invoiced_on", "date", ({ line }) => line.invoicedOn),
  ],
  derived: jobDerived,
  target: { table: "part_lines", key: ["unit_id", "job_id", "line"], storedKey: storedUnderJob, onInsert: {} },
  named: { column: "line", noun: "part line" },
  first: firstPartLines,
  async resolve(tx, staged) {
    if (!(await resolveFirstRows(tx, staged, "part_lines"))) await resolveJobOfRows(tx, staged);
  },
  async check(tx, staged) {
    await checkJobOfRows(tx, staged);
    await flagRows(
      tx,
      staged,
      `select s.row, 'component', s.component, 'is not a component of the kind ' || s.kind_of_model, 'Correct the component or the job number.'
       from ${staged.table} s where s.readable and s.component is not null and s.kind_of_model is not null
         and not exists (select from component_uses w where w.component = s.component and w.product_type = s.kind_of_model)`,
    );
    await netReturns(tx, staged);
  },
  place: numberPartLines,
  async finish(tx, staged, batchId) {
    await keepJobs(tx, staged, batchId);
    await noteWords(tx, {
      rows: `select distinct component, kind_of_model from ${staged.table} where fate is not null and component is not null`,
      batchId,
    });
  },
  recounts: "nothing",
});
