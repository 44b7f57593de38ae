import { execFile } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import process from "node:process";
import { promisify } from "node:util";
import { bundled } from "./bundled.mjs";
import { ownSite } from "./sites.mjs";

const units = 600;
const firstDay = Date.UTC(2021, 0, 4);
const lastDay = Date.UTC(2026, 9, 24);
const oneDay = 86_400_000;

/**
 * Loads the washers of two more makers into the database of the site under test. One maker's machines of four weeks of 2023
 * lose their drain pumps within a year or two; all others lose one now and then, as regularly as a clock.
 */
export async function loadBadLot(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-bad-lot-"));
  try {
    const [register, jobs] = [join(folder, "units.csv"), join(folder, "jobs.csv")];
    writeFileSync(register, text(washers().map(({ madeAt: _, ...unit }) => unit)));
    writeFileSync(jobs, text(washers().flatMap(jobsOf)));
    const env = { ...process.env, DATABASE_URL: readFileSync(ownSite.note, "utf8") };
    const words = [...bundled("app/commands/load.ts"), register, jobs];
    await promisify(execFile)(process.execPath, words, { cwd: join(import.meta.dirname, ".."), env });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Washer {
  readonly maker: string;
  readonly model: string;
  readonly product_type: string;
  readonly serial: string;
  readonly made: string;
  readonly installed_on: string;
  readonly madeAt: number;
}

function washers(): Washer[] {
  return Array.from({ length: units }, (_, i) => {
    const installed = firstDay + Math.floor((i * 1800) / units) * oneDay;
    const made = installed - 40 * oneDay;
    const own = i % 2 === 0;
    return {
      maker: own ? "Hollin" : "Marrick",
      model: own ? "HN40" : "MK7",
      product_type: "front_load_washer",
      serial: `${own ? "H" : "M"}${iso(made).replaceAll("-", "").slice(2)}${String(i).padStart(4, "0")}`,
      made: iso(made),
      installed_on: iso(installed),
      madeAt: made,
    };
  });
}

function jobsOf({ maker, model, product_type, serial, madeAt, installed_on }: Washer, i: number) {
  const isBad = maker === "Hollin" && madeAt >= Date.UTC(2023, 2, 6) && madeAt < Date.UTC(2023, 3, 3);
  const installed = Date.parse(installed_on);
  const every = isBad ? 200 : 5000;
  const first = isBad ? 300 + 11 * (i % 20) : (i * 1117) % every;
  const days: number[] = [];
  for (let day = installed + first * oneDay; day < lastDay; day += every * oneDay) days.push(day);
  return days.map((day, count) => ({
    job_number: `BL-${serial}-${count}`,
    status: "closed",
    maker,
    model,
    product_type,
    serial,
    requested_on: iso(day),
    completed_on: iso(Math.min(day + 3 * oneDay, lastDay)),
    complaint: "Will not drain",
    symptom: "will_not_drain",
    component: "drain_pump",
    cause: "component",
    visits: "1",
  }));
}

function text(rows: readonly Readonly<Record<string, string>>[]): string {
  const columns = Object.keys(rows[0] ?? {});
  return `${[columns, ...rows.map((row) => columns.map((column) => row[column] ?? ""))].map((cells) => cells.join(",")).join("\r\n")}\r\n`;
}

function iso(at: number): string {
  return new Date(at).toISOString().slice(0, 10);
}
