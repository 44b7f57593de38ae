// Speed of taking in somebody's own export, by a matching: the way of every file that no program of ours has written.
import { mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { LoadMode } from "@/db/writes/load-result";
import { loadTable } from "@/db/writes/load-table";
import type { TableForm } from "@/lib/intake/tables/table-form";
import { bareCopy, seconds } from "./bare-copy";
import { withBenchCompany } from "./bench-company";
import { describeProcessor, processorSeconds, processorSince, StatementTimes } from "./intake-profile";
import { exportMatching, writeExport } from "./intake-rows";
import { LoadWatch } from "./load-watch";
import { say } from "./say";

const form: TableForm = { kind: "text", encoding: "utf-8", delimiter: ",", headerRow: 1 };
const columns = exportMatching.columns.map((_, place) => `column_${place}`);

/** @param most  rows of the largest file; a tenth of them are loaded first */
export async function exportAgainstCopy(most = 200_000): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-bench-"));
  const times: number[] = [];
  try {
    for (const rows of [most / 10, most]) times.push(await withBenchCompany(folder, () => firstExport(folder, rows)));
    const [tenth = Number.NaN, whole = Number.NaN] = times;
    say("  ten times the rows cost", `${(whole / tenth).toFixed(1)} x`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Checked, as the page does before anybody presses Add, and then added; and the next file, of which half is on file. */
async function firstExport(folder: string, rows: number): Promise<number> {
  const path = join(folder, "export.csv");
  await writeExport(path, { rows });
  const { taken: copy } = await bareCopy(path, columns);
  const megabytes = (statSync(path).size / 1e6).toFixed(0);
  say(`${rows} rows of ${columns.length} columns of somebody's own, a row a part line`, `${megabytes} MB`);
  const checked = await timed(path, "dry run", rows);
  const added = await timed(path, "add", rows);
  say("  adding, against COPY", `${(copy / added).toFixed(3)} of COPY`);
  const size = Math.min(20_000, rows);
  await writeExport(path, { rows: size, from: rows - size / 2 });
  await timed(path, "add", size);
  return checked + added;
}

const doing: Readonly<Record<LoadMode, string>> = {
  "dry run": "checked",
  add: "added",
  "add and set aside": "added",
};

async function timed(path: string, mode: LoadMode, rows: number): Promise<number> {
  const statements = process.argv.includes("--profile") ? await StatementTimes.ofServer() : undefined;
  const watch = new LoadWatch(statements === undefined ? 200 : 5_000);
  const begun = await processorSeconds();
  statements?.begin();
  const taken = await seconds(() => loadTable({ path, fileName: "export.csv", form, matching: exportMatching, mode }));
  statements?.end();
  const used = await processorSince(begun);
  const { megabytes, p95 } = await watch.end();
  say(`  ${rows} rows ${doing[mode]}: rows a second`, (rows / taken).toFixed(0));
  say("    seconds; processor of the program and of the server", `${taken.toFixed(1)}; ${describeProcessor(used)}`);
  say("    most memory; a list's query meanwhile, 95 % within", `${megabytes.toFixed(0)} MB; ${p95.toFixed(0)} ms`);
  return taken;
}
