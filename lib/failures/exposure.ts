import { day } from "@/lib/calendar/day";
import { type DayNumber, dayFromNumber, dayNumber } from "@/lib/calendar/day-number";
import type { UnitWindow } from "./cells";
import { observedAges } from "./observation";
import { ageBands, type Dimension, type RateQuestion } from "./rate-question";

/** Time at risk of some units over one range of age. */
export interface Exposure {
  readonly units: number;
  readonly unitDays: number;
  /** Sum over units of the square of each unit's days: the robust interval needs it. */
  readonly squaredUnitDays: number;
}

export const noExposure: Exposure = { units: 0, unitDays: 0, squaredUnitDays: 0 };

/** Per model: one exposure for each age band in order, and last the exposure over all ages together. */
export type ModelExposure = ReadonlyMap<number, readonly Exposure[]>;

export const allAges = ageBands.length;

/** One pass over the windows; the cost does not depend on how many units or jobs stand behind them. */
export function exposureByModel(
  windows: readonly UnitWindow[],
  period: Pick<RateQuestion, "from" | "until">,
): ModelExposure {
  const byModel = new Map<number, Exposure[]>();
  for (const window of windows) {
    const ages = observedAges(window, period);
    if (ages === undefined) continue;
    const rows = byModel.get(window.modelId) ?? Array.from({ length: allAges + 1 }, () => noExposure);
    byModel.set(window.modelId, rows);
    ageBands.forEach((band, index) => {
      grow(rows, index, window.units, Math.min(ages.exit, band.untilDay) - Math.max(ages.entry, band.fromDay));
    });
    grow(rows, allAges, window.units, ages.exit - ages.entry);
  }
  return byModel;
}

/** Time at risk as a grouping needs it: of each calendar year by itself, or of the whole period under "". */
export function exposureOf(
  windows: readonly UnitWindow[],
  question: Pick<RateQuestion, "from" | "until"> & { readonly by: readonly Dimension[] },
): ReadonlyMap<string, ModelExposure> {
  if (!question.by.includes("year")) return new Map([["", exposureByModel(windows, question)]]);
  const first = windows.reduce((least, { observedFrom }) => Math.min(least, observedFrom), question.until);
  const from = Math.max(question.from ?? first, first);
  const years = new Map<string, ModelExposure>();
  for (let year = yearNumber(from); from < question.until && year <= yearNumber(question.until - 1); year++)
    years.set(String(year), exposureByModel(windows, withinYear(question, year)));
  return years;
}

/** The part of a period that lies in one calendar year. */
export function withinYear(
  { from, until }: Pick<RateQuestion, "from" | "until">,
  year: number,
): Pick<RateQuestion, "from" | "until"> {
  const [first, after] = [dayNumber(day(`${year}-01-01`)), dayNumber(day(`${year + 1}-01-01`))];
  return { from: Math.max(from ?? first, first), until: Math.min(until, after) };
}

/** Calendar year of a day. */
export function yearNumber(of: DayNumber): number {
  return Number(dayFromNumber(of).slice(0, 4));
}

export function addExposure(a: Exposure, b: Exposure): Exposure {
  return {
    units: a.units + b.units,
    unitDays: a.unitDays + b.unitDays,
    squaredUnitDays: a.squaredUnitDays + b.squaredUnitDays,
  };
}

function grow(rows: Exposure[], index: number, units: number, daysEach: number): void {
  if (daysEach <= 0) return;
  rows[index] = addExposure(rows[index] ?? noExposure, {
    units,
    unitDays: units * daysEach,
    squaredUnitDays: units * daysEach * daysEach,
  });
}
