// Small invented files for the tests of the intake, written to a folder of their own.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { seedCatalogue } from "@/db/seed-catalogue";
import { loadFile } from "@/db/writes/load-file";
import type { LoadMode, LoadResult } from "@/db/writes/load-result";
import { day } from "@/lib/calendar/day";
import { csvCell } from "@/synthetic-data/csv-file";

export const today = day("2025-06-30");

export type Row = Readonly<Record<string, string | number>>;

/** CSV of these rows: the columns are those of the first row, or the given ones. */
export function csv(rows: readonly Row[], columns: readonly string[] = Object.keys(rows[0] ?? {})): string {
  const lines = rows.map((row) => columns.map((column) => csvCell(String(row[column] ?? ""))).join(","));
  return `${[columns.join(","), ...lines].join("\r\n")}\r\n`;
}

export function unit(serial: string, more: Row = {}): Row {
  return {
    maker: "Hearth-Wick",
    model: "FW5500",
    product_type: "front_load_washer",
    serial,
    made: "2022-01",
    sold_on: "",
    installed_on: "2022-03-01",
    retired_on: "",
    ...more,
  };
}

export function job(number: string, serial: string, more: Row = {}): Row {
  return {
    job_number: number,
    maker: "Hearth-Wick",
    model: "FW5500",
    product_type: "",
    serial,
    requested_on: "2023-05-01",
    completed_on: "2023-05-03",
    symptom: "will_not_drain",
    component: "drain_pump",
    cause: "component",
    ...more,
  };
}

export function partLine(number: string, line: number, more: Row = {}): Row {
  return {
    job_number: number,
    line,
    part_number: "P-100",
    component: "drain_pump",
    quantity: 1,
    unit_cost: "41.50",
    ...more,
  };
}

export const shopDocument = {
  schema: "ohmsworth/shop/1",
  name: "Test Appliance Service",
  currency: "USD",
  timeZone: "America/Los_Angeles",
  territory: "US-CA",
  recordsFrom: "2022-06-01",
  madeGraceMonths: 3,
  demo: true,
};

/** A folder for the files of one test file; `load` writes a text and loads it. */
export function fileFolder() {
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-files-"));
  let count = 0;
  return {
    folder,
    async load(text: string | Uint8Array, mode: LoadMode = "add", fileName = "test.csv"): Promise<LoadResult> {
      const path = join(folder, `${++count}.csv`);
      writeFileSync(path, text);
      return await loadFile({ path, fileName, mode, today });
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

const tables =
  "technician_notes, signal_marks, found_signals, signal_runs, settled_quarter, stock_movements, stock_levels, stock_parts, part_order_events, part_orders, part_plans, part_outlooks, demand_knowledge, demand_totals, parts_to_forecast, remittance_postings, remittance_lines, remittances, payer_wordings, unclaimed_work, missing_lists, units_to_judge, all_to_judge, edit_differences, hand_edits, job_joins, cell_notes, batch_made, file_drafts, remembered_matchings, remembered_words, api_keys, idempotency_keys, suggested_callbacks, contracts, parts, attachments, removed_attachments, readings, part_lines, claim_events, claim_lines, claims, job_cells, repeated_jobs, unit_windows, unplaced_units, jobs, units, expected_ranges, policies, models, makers, held_rows, batch_changes, batch_made, batches, shop, component_uses, components, symptom_uses, symptoms, product_types";

/** An empty database with the words of the catalogue, and the company where asked for. */
export async function startAfresh(): Promise<void> {
  const { asDatabaseOwner } = await import("../own-database"); // only within a test file; measurements write files with the rest
  await asDatabaseOwner(`truncate ${tables} restart identity cascade`);
  await seedCatalogue();
}

/** The batch of a file that must have been added. */
export function batchOf(result: LoadResult): number {
  if (result.kind !== "added") throw new Error(`Not added: ${JSON.stringify(result)}`);
  return result.batchId;
}
