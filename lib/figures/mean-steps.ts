import { daysPerMonth, daysPerYear } from "@/lib/failures/rate-question";
import { formatCount } from "@/lib/format/format-count";
import { describeMean } from "@/lib/format/format-mean";
import type { MeanCumulative, RecurrenceStep } from "@/lib/statistics/recurrence/mean-cumulative-function";
import { axesFor, byMonths, type CurvePoint, type DrawnCurve, largestJump, stopRule } from "./drawn-curve";

/** Failures per unit by age of the unit, repeats counted: steps upwards, as far as they can be trusted. */
export type MeanSteps =
  | DrawnMeans
  | { readonly kind: "nobody-failed"; readonly untilMonths: number; readonly units: number }
  | { readonly kind: "nobody-watched" }
  | { readonly kind: "too-few-to-draw" };

export interface DrawnMeans extends DrawnCurve {
  readonly kind: "steps";
  readonly byYear: readonly MeanAt[];
  /** Age at which watching began; failures before it are not in the line. */
  readonly fromMonths: number;
}

/** How the line stands at a whole year of age. */
export interface MeanAt {
  readonly years: number;
  readonly step: RecurrenceStep;
  /** Failures up to then. */
  readonly failures: number;
}

/** @param fromAge youngest age in days at which a unit was watched: the line begins there, at 0 */
export function meanSteps(recurrence: MeanCumulative, fromAge: number): MeanSteps {
  if (recurrence.kind === "no-exposure") return { kind: "nobody-watched" };
  const untilMonths = recurrence.lastAge / daysPerMonth;
  if (recurrence.kind === "no-events") return { kind: "nobody-failed", untilMonths, units: recurrence.units };
  const stop = recurrence.steps.findIndex(({ atRisk }) => 1 / atRisk > largestJump);
  const trusted = stop === -1 ? recurrence.steps : recurrence.steps.slice(0, stop);
  const last = trusted.at(-1);
  if (last === undefined) return { kind: "too-few-to-draw" };
  const endMonths = last.age / daysPerMonth;
  const fromMonths = fromAge / daysPerMonth;
  const points = [{ months: fromMonths, failed: 0, low: 0, high: 0, atRisk: 0, spoken: "" }, ...trusted.map(toPoint)];
  const byYear = meansByYear(trusted);
  return {
    kind: "steps",
    ...axesFor("failures per 100 units", endMonths, Math.max(...points.map(({ high }) => high))),
    points,
    endMonths,
    stopped: endMonths < untilMonths - 1 ? `The line stops ${stopRule}` : undefined,
    byYear,
    fromMonths,
    under: [
      { name: "units watched", at: byYear.map(({ years, step }) => ({ months: 12 * years, count: step.atRisk })) },
      { name: "failures so far", at: byYear.map(({ years, failures }) => ({ months: 12 * years, count: failures })) },
    ],
  };
}

function meansByYear(steps: readonly RecurrenceStep[]): MeanAt[] {
  const lastYear = Math.floor((steps.at(-1)?.age ?? 0) / daysPerYear);
  return Array.from({ length: lastYear }, (_, index) => index + 1).flatMap((years) => {
    const until = steps.filter(({ age }) => age <= years * daysPerYear);
    const step = until.at(-1);
    return step === undefined ? [] : [{ years, step, failures: until.reduce((sum, { events }) => sum + events, 0) }];
  });
}

function toPoint({ age, mean, atRisk, limits }: RecurrenceStep): CurvePoint {
  const low = limits.kind === "limits" ? limits.low : mean;
  const high = limits.kind === "limits" ? limits.high : mean;
  const months = age / daysPerMonth;
  const spoken = `${describeMean(mean, low, high)} ${byMonths(months)}, ${formatCount(atRisk)} units watched`;
  return { months, failed: mean, low, high, atRisk, spoken };
}
