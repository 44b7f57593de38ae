// Rows that no honest intake can take in: about two in a thousand of each file, each wrong in exactly one way.
import type { DemoFiles } from "./demo-files";
import { happens } from "./draws";
import type { Cells, JobColumn } from "./file-columns";
import { makers, modelNumber, models } from "./models";
import type { Random } from "./random";
import type { RegisterUnit } from "./register-unit";
import type { HeldKind, HeldRow } from "./truth";
import { unitRow } from "./unit-row";

const heldShare = 0.002;

/** Writes bad rows between the good ones and remembers where. */
export interface HeldRowWriter {
  readonly rows: readonly HeldRow[];
  readonly afterUnit: (unit: RegisterUnit) => void;
  readonly afterJob: (unit: RegisterUnit, cells: Cells<JobColumn>) => void;
  readonly afterPartLine: (jobNumber: string) => void;
  readonly afterReading: (jobNumber: string) => void;
}

export function heldRowWriter(random: Random, files: DemoFiles): HeldRowWriter {
  const rows: HeldRow[] = [];
  let count = 0;
  const due = (kinds: readonly HeldKind[], write: (kind: HeldKind, count: number) => HeldRow) => {
    if (!happens(random, heldShare)) return;
    count += 1;
    const kind = kinds[count % kinds.length];
    if (kind !== undefined) rows.push(write(kind, count));
  };
  return {
    rows,
    afterUnit: (unit) =>
      due(["impossible_date"], (kind, number) => ({
        file: "units.csv",
        row: files.units.write(badUnit(unit, number)),
        kind,
      })),
    afterJob: (unit, cells) =>
      due(["impossible_date", "unknown_component", "serial_of_another_model"], (kind, number) => ({
        file: "jobs.csv",
        row: files.jobs.write(badJob(kind, unit, cells, number)),
        kind,
      })),
    afterPartLine: (jobNumber) =>
      due(["negative_quantity", "unknown_job", "unknown_component"], (kind, number) => ({
        file: "part-lines.csv",
        row: files.partLines.write(badPartLine(kind, jobNumber, number)),
        kind,
      })),
    afterReading: (jobNumber) =>
      due(["unknown_check", "unknown_job"], (kind, number) => ({
        file: "readings.csv",
        row: files.readings.write(badReading(kind, jobNumber, number)),
        kind,
      })),
  };
}

/** A unit of its own, so that holding it takes nothing from the register. */
function badUnit(unit: RegisterUnit, number: number): ReturnType<typeof unitRow> {
  return {
    ...unitRow(unit),
    serial: `Z0000${String(number).padStart(7, "0")}`,
    installed_on: "2024-02-30",
    retired_on: "",
    recorded_from: "",
  };
}

function badJob(kind: HeldKind, unit: RegisterUnit, cells: Cells<JobColumn>, number: number): Cells<JobColumn> {
  const base = {
    ...cells,
    job_number: `JX-${number}`,
    status: "closed",
    serial: unit.serial,
    model: modelNumber(unit.model),
    callback_of: "",
  };
  switch (kind) {
    case "impossible_date":
      return { ...base, requested_on: "", first_visit_on: "", completed_on: "2025-02-30" };
    case "unknown_component":
      return { ...base, component: "flux_valve" };
    default: {
      const other = models.find(
        (model) => model.maker === unit.model.maker && model.productType !== unit.model.productType,
      );
      return other === undefined
        ? base
        : {
            ...base,
            maker: makers[other.maker].name,
            model: modelNumber(other),
            product_type: other.productType,
            component: "",
            symptom: "",
            failure_mode: "",
            cause: "not_determined",
          };
    }
  }
}

function badPartLine(kind: HeldKind, jobNumber: string, number: number) {
  const base = {
    job_number: jobNumber,
    line: 90,
    part_number: "BH-950",
    description: "Hose and fittings",
    role: "fitted",
    quantity: 1,
    unit_cost: "18.90",
  };
  if (kind === "negative_quantity") return { ...base, quantity: -1 };
  return kind === "unknown_job" ? { ...base, job_number: `JY-${number}` } : { ...base, component: "flux_valve" };
}

function badReading(kind: HeldKind, jobNumber: string, number: number) {
  const base = {
    job_number: jobNumber,
    number: 90,
    mode: "observation",
    outcome: "finding",
    word: "clear",
    power: "off",
  };
  return kind === "unknown_job"
    ? { ...base, check: "hose", job_number: `JY-${number}` }
    : { ...base, check: "moon_phase" };
}
