import type { MeterMode } from "@/lib/domain/reading";
import { drawWhole, happens } from "./draws";
import type { Cells, ReadingColumn } from "./file-columns";
import type { JobDetail } from "./job-detail";
import { pumpSheets, sheetReference } from "./model-sheets";
import type { Model } from "./models";
import type { Random } from "./random";
import type { RegisterUnit } from "./register-unit";
import { type RepairStep, repairReadings } from "./repair-readings";
import { takenAt } from "./taken-at";
import type { JobPlan } from "./unit-jobs";

/** Share of the failures with a list of steps on which the technician wrote readings down. */
const readingsShare = 0.6;

/** Share of those whose decisive reading speaks against the repair. */
const contradictedShare = 0.12;

export interface WrittenReadings {
  readonly rows: readonly Cells<ReadingColumn>[];
  readonly contradicted: boolean;
}

/** The job's rows of readings.csv; none where nothing was written down. */
export function jobReadings(unit: RegisterUnit, job: JobPlan, detail: JobDetail, jobNumber: string): WrittenReadings {
  const { random } = detail;
  const none = { rows: [], contradicted: false };
  if (job.status !== "closed" || detail.cause !== "component" || detail.component === undefined) return none;
  const lists = repairReadings[unit.model.productType]?.[detail.component] ?? [];
  const list = lists.find(({ modes }) => modes === undefined || modes.includes(detail.failureMode ?? ""));
  if (list === undefined || !happens(random, readingsShare)) return none;
  const contradicted = happens(random, contradictedShare);
  const steps = [...list.before.map((step) => ({ step, good: true })), { step: list.decisive, good: contradicted }];
  let minute = drawWhole(random, 8 * 60, 16 * 60);
  const rows = steps.map(({ step, good }, index) => {
    minute += drawWhole(random, 2, 9);
    return {
      job_number: jobNumber,
      number: index + 1,
      ...stepCells(random, unit.model, step, good),
      technician: detail.technician,
      taken_at: takenAt(job.firstVisitOn, minute),
    };
  });
  return { rows, contradicted };
}

function stepCells(random: Random, model: Model, step: RepairStep, good: boolean): Cells<ReadingColumn> {
  switch (step.kind) {
    case "word":
      return {
        check: step.check,
        mode: "observation",
        outcome: "finding",
        word: good ? step.good : step.bad,
        power: step.power,
      };
    case "volts":
      return voltCells(random, model, step, good);
    case "measure":
      return measureCells(random, model, step, good);
  }
}

function voltCells(
  random: Random,
  model: Model,
  step: Extract<RepairStep, { kind: "volts" }>,
  good: boolean,
): Cells<ReadingColumn> {
  const pump = step.check === "pump_voltage" ? pumpSheets[model.key] : undefined;
  const [low, high] = pump?.volts ?? [step.low, step.high];
  const mode: MeterMode = pump?.mode ?? (step.check === "fan_voltage" ? "volt_dc" : "volt_ac");
  const driven = step.check === "supply_voltage" ? {} : { load_connected: "yes", commanded: "yes" };
  const value = good ? rounded(low + (0.2 + 0.6 * random.share()) * (high - low)) : (step.badVolts ?? 0);
  return { check: step.check, mode, outcome: "number", value, unit: "V", power: "live", ...driven };
}

function measureCells(
  random: Random,
  model: Model,
  step: Extract<RepairStep, { kind: "measure" }>,
  good: boolean,
): Cells<ReadingColumn> {
  const pump = step.check === "pump_winding" ? pumpSheets[model.key] : undefined;
  const [low, high] = pump?.winding ?? [step.low, step.high];
  const number = good ? rounded(low + (0.15 + 0.7 * random.share()) * (high - low)) : step.bad;
  const outcome =
    typeof number === "number" ? { outcome: "number", value: number, unit: step.unit } : { outcome: number };
  const sheet = happens(random, 0.85)
    ? { sheet_low: low, sheet_high: high, sheet_reference: sheetReference(model) }
    : {};
  return {
    check: step.check,
    mode: step.mode,
    ...outcome,
    power: step.power,
    isolated: happens(random, 0.95) ? "yes" : "no",
    ...(step.atC === undefined ? {} : { temperature_c: step.atC }),
    ...sheet,
  };
}

/** As a meter shows it: three figures. */
function rounded(value: number): number {
  return Number(value.toPrecision(3));
}
