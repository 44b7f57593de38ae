import { addDays, type Day } from "@/lib/calendar/day";
import { type DayNumber, dayNumber } from "@/lib/calendar/day-number";
import type { ProductType } from "@/lib/domain/product-type";
import { addedBetween, concerns } from "./added-troubles";
import { weekNumber, weekStart } from "./production-week";
import { weibullRenewals } from "./renewal";
import { wornDays } from "./season";
import type { TrueLife, Truth } from "./truth";

/** A unit of the register, whichever route shows it: its exposure and what its serial says. */
export interface ExposedUnit {
  /** Model number as in units.csv. */
  readonly model: string;
  readonly serial: string;
  readonly inServiceOn: Day;
  readonly observedFrom: Day;
  /** First day no longer observed: retired, or the cut-off. */
  readonly observedTo: Day;
}

export interface ExpectedFailures {
  readonly productType: ProductType;
  readonly model: string;
  readonly component: string;
  readonly expected: number;
}

/**
 * How many failures of each component of each model the files should show in those units' observed days, on average over
 * all demos that could have been drawn: renewals of the true life over the unit's wear, less what was not closed by the
 * end of the records, times the share that dirt leaves observable; plus the fixed jobs of truth.fixedJobs, which are
 * certain, while their units draw nothing. Units whose serial carries no production week take no part in planted defects.
 * @throws RangeError for a model that truth does not know
 */
export function expectedFailures(truth: Truth, units: readonly ExposedUnit[]): readonly ExpectedFailures[] {
  const renewals = renewalTables(truth);
  const until = dayNumber(truth.until);
  const livesByModel = new Map<string, TrueLife[]>();
  for (const life of truth.lives) livesByModel.set(life.model, [...(livesByModel.get(life.model) ?? []), life]);
  const sums = new Map<TrueLife, number>(truth.lives.map((life) => [life, 0]));
  const told = new Set(truth.fixedJobs.map(({ serial }) => serial));
  for (const unit of units) {
    if (told.has(unit.serial)) continue;
    const lives = livesByModel.get(unit.model);
    if (lives === undefined) throw new RangeError(`units: no such model in truth: ${unit.model}`);
    const window = windowOf(unit);
    const tail = openDays(truth, window, until);
    for (const life of lives) {
      const scale = scaleInUnit(truth, life, unit.serial);
      const table = renewals(life.shape);
      const upTo = (on: DayNumber) => table(wornDays(worn(life), window.inService, on) / scale);
      let sum = upTo(window.to) - upTo(window.from);
      for (const { on, open } of tail) sum -= open * (upTo(on + 1) - upTo(on));
      sum += addedFailures(truth, life, unit, window, tail);
      sums.set(life, (sums.get(life) ?? 0) + sum);
    }
  }
  return truth.lives.map((life) => ({
    productType: life.productType,
    model: life.model,
    component: life.component,
    expected: truth.observableShare * (sums.get(life) ?? 0) + fixedFailures(truth, life),
  }));
}

/** Failures on top of the life, where a trouble was added to this component of this model. */
function addedFailures(truth: Truth, life: TrueLife, { serial }: ExposedUnit, window: Window, tail: OpenDays): number {
  const week = weekOfSerial(serial);
  let sum = 0;
  for (const trouble of truth.addedTroubles) {
    const { what, modelNumber } = trouble;
    if (what.kind !== "failure" || what.component !== life.component || modelNumber !== life.model) continue;
    if (!concerns(trouble, week)) continue;
    const between = (from: DayNumber, to: DayNumber) => addedBetween(trouble, window.inService, from, to);
    sum += between(window.from, window.to);
    for (const { on, open } of tail) sum -= open * between(on, on + 1);
  }
  return sum;
}

type OpenDays = readonly { readonly on: DayNumber; readonly open: number }[];

interface Window {
  readonly inService: DayNumber;
  readonly from: DayNumber;
  readonly to: DayNumber;
}

function windowOf(unit: ExposedUnit): Window {
  const inService = dayNumber(unit.inServiceOn);
  const from = dayNumber(unit.observedFrom);
  const to = dayNumber(unit.observedTo);
  return { inService, from: Math.max(from, inService), to: Math.max(to, from, inService) };
}

/** The unit's observed days of the last weeks, each with the chance that a job reported on it was still open at the end. */
function openDays({ closedWithin }: Truth, window: Window, until: DayNumber): OpenDays {
  return closedWithin
    .map((closed, ago) => ({ on: until - ago, open: 1 - closed }))
    .filter(({ on, open }) => open > 0 && on >= window.from && on < window.to);
}

function fixedFailures(truth: Truth, life: TrueLife): number {
  return truth.fixedJobs.filter(
    ({ model, component, cause }) => model === life.model && component === life.component && cause === "component",
  ).length;
}

/** Scale of the life in the unit of that serial: shorter where a planted defect took its production week. */
function scaleInUnit(truth: Pick<Truth, "plantedDefects">, life: TrueLife, serial: string): number {
  const week = weekOfSerial(serial);
  const defect = truth.plantedDefects.find(
    ({ modelNumber, component, fromWeek, toWeek }) =>
      modelNumber === life.model &&
      component === life.component &&
      week !== undefined &&
      week >= fromWeek &&
      week <= toWeek,
  );
  return defect === undefined ? life.scaleDays : life.scaleDays / defect.multiplier ** (1 / life.shape);
}

/** B2409…: made in week 9 of 2024. */
function weekOfSerial(serial: string): number | undefined {
  const digits = /^[A-Z](\d{2})(\d{2})\d{7}$/.exec(serial);
  if (digits === null) return undefined;
  return weekNumber(weekStart({ year: 2000 + Number(digits[1]), week: Number(digits[2]) }));
}

/** One table per shape, long enough for the oldest unit in the shortest life. */
function renewalTables(truth: Truth): (shape: number) => (age: number) => number {
  const oldest = dayNumber(truth.until) - dayNumber(addDays(truth.recordsFrom, -15 * 366));
  const shortest = new Map<number, number>();
  for (const life of truth.lives) {
    const worst = Math.max(1, ...truth.plantedDefects.map(({ multiplier }) => multiplier));
    const scale = life.scaleDays / worst ** (1 / life.shape);
    shortest.set(life.shape, Math.min(scale, shortest.get(life.shape) ?? Number.POSITIVE_INFINITY));
  }
  const tables = new Map<number, (age: number) => number>();
  return (shape) => {
    const known = tables.get(shape);
    if (known !== undefined) return known;
    const table = weibullRenewals(shape, oldest / (shortest.get(shape) ?? 1));
    tables.set(shape, table);
    return table;
  };
}

/** Season is kept by product type; other equipment has none. */
function worn({ productType }: TrueLife): Exclude<ProductType, "other_equipment"> {
  if (productType === "other_equipment") throw new RangeError("truth.lives: household types only");
  return productType;
}
