// The demo's files read back with a CSV reader of another origin, and what the tests look up in them.
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { afterAll } from "vitest";
import { addMonths, day, laterOf } from "@/lib/calendar/day";
import type { ExposedUnit } from "@/synthetic-data/expected-failures";
import { scenarioOf } from "@/synthetic-data/scenario";
import type { Truth } from "@/synthetic-data/truth";
import { writeDemo } from "@/synthetic-data/write-demo";

export type Row = Readonly<Record<string, string>>;

export interface DemoReading {
  readonly folder: string;
  readonly truth: Truth;
  readonly units: readonly Row[];
  readonly contracts: readonly Row[];
  readonly jobs: readonly Row[];
  readonly partLines: readonly Row[];
  readonly readings: readonly Row[];
  readonly ranges: readonly Row[];
  readonly photos: readonly Row[];
}

export async function writeAndRead(asked: {
  readonly seed: number;
  readonly size: number;
  readonly until?: string;
}): Promise<DemoReading> {
  const folder = mkdtempSync(join(tmpdir(), "demo-"));
  written.push(folder);
  await writeDemo(scenarioOf({ until: "2026-10-31", ...asked }), folder);
  const rows = (file: string): readonly Row[] => parse(readFileSync(join(folder, file)), { columns: true });
  return {
    folder,
    truth: JSON.parse(readFileSync(join(folder, "truth.json"), "utf8")) as Truth, // what writeDemo has just written
    units: rows("units.csv"),
    contracts: rows("contracts.csv"),
    jobs: rows("jobs.csv"),
    partLines: rows("part-lines.csv"),
    readings: rows("readings.csv"),
    ranges: rows("ranges.csv"),
    photos: rows("photos.csv"),
  };
}

const written: string[] = [];
afterAll(() => {
  for (const folder of written) rmSync(folder, { recursive: true, force: true });
});

/** Rows of a file that intake should take in. */
export function acceptable({ truth }: DemoReading, file: string, rows: readonly Row[]): readonly Row[] {
  const held = new Set(truth.heldRows.filter((row) => row.file === file).map(({ row }) => row));
  return rows.filter((_, index) => !held.has(index + 2));
}

/** Units that carry exposure, placed by the rule of the register: installed, delivered, sold, made plus three months. */
export function exposedUnits(demo: DemoReading): readonly ExposedUnit[] {
  const { until, recordsFrom } = demo.truth;
  const cutOff = day(until < "2026-12-31" ? nextDay(until) : "2027-01-01");
  return acceptable(demo, "units.csv", demo.units).flatMap((unit): readonly ExposedUnit[] => {
    const dated = unit.installed_on || unit.delivered_on || unit.sold_on;
    if (!dated && !unit.made) return [];
    const inServiceOn = dated ? day(dated) : addMonths(day(unit.made ?? ""), 3);
    const observedFrom = [inServiceOn, recordsFrom, unit.recorded_from ? day(unit.recorded_from) : recordsFrom].reduce(
      laterOf,
    );
    const observedTo = unit.retired_on ? day(unit.retired_on) : cutOff;
    if (observedTo <= observedFrom) return [];
    return [{ model: unit.model ?? "", serial: unit.serial ?? "", inServiceOn, observedFrom, observedTo }];
  });
}

/** Counted failures by component and model, of the units given, on their observed days. */
export function observedFailures(demo: DemoReading, units: readonly ExposedUnit[]): ReadonlyMap<string, number> {
  const bySerial = new Map(units.map((unit) => [unit.serial, unit]));
  const counts = new Map<string, number>();
  for (const job of acceptable(demo, "jobs.csv", demo.jobs)) {
    const unit = bySerial.get(job.serial ?? "");
    const on = job.requested_on || job.first_visit_on || job.completed_on || "";
    if (unit === undefined || job.status !== "closed" || job.cause !== "component" || !job.component) continue;
    if (on < unit.observedFrom || on >= unit.observedTo) continue;
    const key = `${unit.model} ${job.component}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return counts;
}

function nextDay(text: string): string {
  return new Date(Date.parse(text) + 86_400_000).toISOString().slice(0, 10);
}
