// Writes the invented company as days: one row per unit of the register, with the failures seen of it. Made from the rows of
// the generator's files by code of its own, which shares nothing with the intake, the database or lib/failures, so that
// both R and our counts can be held against it. Run by npm run reference; seed 1, size 1.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { parse } from "csv-parse/sync";
import { day } from "@/lib/calendar/day";
import { components } from "@/lib/domain/components";
import { scenarioOf } from "@/synthetic-data/scenario";
import { writeDemo } from "@/synthetic-data/write-demo";

const until = "2026-10-31";
type Row = Readonly<Record<string, string>>;

async function main(): Promise<void> {
  const [livesFile, typesFile] = process.argv.slice(2);
  if (livesFile === undefined || typesFile === undefined)
    throw new RangeError("two files to write: lives, and the types of components");
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-demo-"));
  try {
    const { recordsFrom, heldRows } = await writeDemo(scenarioOf({ seed: 1, size: 1, until: day(until) }), folder);
    const held = (file: string) => new Set(heldRows.filter((row) => row.file === file).map(({ row }) => row));
    const units = rowsOf(join(folder, "units.csv"), held("units.csv"));
    const jobs = rowsOf(join(folder, "jobs.csv"), held("jobs.csv"));
    const lines = livesOf(units, jobs, recordsFrom);
    const heading = `# The demo company of seed 1 up to ${until}, by tests/reference/demo-lives.ts; days since 1970-01-01\n`;
    writeFileSync(
      livesFile,
      gzipSync(`${heading}type,in_service,observed_from,retired,failures\n${lines.join("\n")}\n`, { level: 9 }),
    );
    const types = components.flatMap(({ key, productTypes }) => productTypes.map((type) => `${key},${type}`));
    writeFileSync(typesFile, `# Which product types have which component\ncomponent,type\n${types.join("\n")}\n`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Rows of a file but for those that are wrong on purpose; the heading is row 1. */
function rowsOf(path: string, without: ReadonlySet<number>): Row[] {
  // csv-parse types its records by the `columns` option only loosely; every cell is text.
  const rows = parse(readFileSync(path), { columns: true }) as Row[];
  return rows.filter((_, index) => !without.has(index + 2));
}

function livesOf(units: readonly Row[], jobs: readonly Row[], recordsFrom: string): string[] {
  const failures = new Map<string, string[]>();
  for (const job of jobs) {
    if (job.status !== "closed" || job.cause !== "component" || !job.component) continue;
    const on = number(job.requested_on || job.first_visit_on || job.completed_on || "");
    const key = plate(job);
    failures.set(key, [...(failures.get(key) ?? []), `${job.component}@${on}`]);
  }
  return units.flatMap((unit) => {
    const retired = unit.retired_on ? number(unit.retired_on) : undefined;
    const begun = unit.installed_on || unit.delivered_on || unit.sold_on;
    const inService = begun ? number(begun) : afterMaking(unit.made ?? "", retired);
    if (inService === undefined) return [];
    const observed = Math.max(inService, number(recordsFrom), unit.recorded_from ? number(unit.recorded_from) : 0);
    if (retired !== undefined && retired < observed) return [];
    return `${unit.product_type},${inService},${observed},${retired ?? ""},${(failures.get(plate(unit)) ?? []).join(" ")}`;
  });
}

function plate({ maker = "", serial = "" }: Row): string {
  return `${maker} ${serial.toUpperCase().replaceAll(/[^A-Z0-9]/g, "")}`;
}

function number(on: string): number {
  return Date.parse(`${on}T00:00:00Z`) / 86_400_000;
}

/** Three months (the company's grace) after the last day on which the unit can have been made, retirement at the latest. */
function afterMaking(made: string, retired: number | undefined): number | undefined {
  const [year, month, on] = made.split("-").map(Number);
  if (year === undefined || Number.isNaN(year) || month === undefined) return undefined;
  const last = new Date(Date.UTC(year, month, 0)).getUTCDate();
  const lastThen = new Date(Date.UTC(year, month + 3, 0)).getUTCDate();
  const grace = Date.UTC(year, month + 2, Math.min(on ?? last, lastThen)) / 86_400_000;
  return Math.min(grace, retired ?? grace);
}

main().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
});
