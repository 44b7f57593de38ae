// Somebody's own files, invented, with their form and matching.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { LoadMode, LoadResult } from "@/db/writes/load-result";
import { loadTable } from "@/db/writes/load-table";
import type { Matching } from "@/lib/intake/matching/matching";
import type { TableForm } from "@/lib/intake/tables/table-form";
import { csv, type Row, today } from "./intake-files";

export const commaText: TableForm = { kind: "text", encoding: "utf-8", delimiter: ",", headerRow: 1 };

const columns: Readonly<Record<string, string | undefined>> = {
  "Job #": "job_number",
  Brand: "maker",
  Model: "model",
  Type: "product_type",
  "Ser #": "serial",
  Called: "requested_on",
  Done: "completed_on",
  Part: "part-lines.part_number",
  Qty: "part-lines.quantity",
  "Unit cost": "part-lines.unit_cost",
  Invoice: "part-lines.invoice_number",
  Component: "component",
  Cause: "cause",
  Trip: "trip",
  Note: "complaint",
  Colour: undefined,
};

/** The columns above, month first, with some words of theirs. */
export const matching: Matching = {
  kind: "jobs",
  rowIs: "one part line",
  columns: Object.entries(columns).map(([source, target]) => ({ source, target })),
  dateOrder: "month first",
  decimalMark: ".",
  labourUnit: "minutes",
  words: {
    product_type: { "w/m": "front_load_washer" },
    cause: { wear: "component" },
    component: { pump: "drain_pump" },
  },
  constants: {},
};

/** A row of their export. */
export function exported(number: string, serial: string, more: Row = {}): Row {
  return {
    "Job #": number,
    Brand: "Hearth-Wick",
    Model: "FW5500",
    Type: "W/M",
    "Ser #": serial,
    Called: "5/13/2023",
    Done: "5/14/2023",
    Part: "",
    Qty: "",
    "Unit cost": "",
    Invoice: "",
    Component: "pump",
    Cause: "wear",
    Trip: "",
    Note: "Will not drain",
    Colour: "white",
    ...more,
  };
}

let count = 0;

/** Loads rows of their export. */
export async function loadExport(
  folder: string,
  rows: readonly Row[],
  mode: LoadMode = "add and set aside",
  more: Partial<Matching> = {},
): Promise<LoadResult> {
  return await loadText(folder, csv(rows, Object.keys(columns)), mode, more);
}

export async function loadText(
  folder: string,
  text: string,
  mode: LoadMode = "add and set aside",
  more: Partial<Matching> = {},
): Promise<LoadResult> {
  const path = join(folder, `table-${++count}.csv`);
  writeFileSync(path, text);
  return await loadTable({
    path,
    fileName: "export.csv",
    form: commaText,
    matching: { ...matching, ...more },
    mode,
    today,
  });
}
