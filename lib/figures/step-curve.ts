import { daysPerMonth } from "@/lib/failures/rate-question";
import { formatCount } from "@/lib/format/format-count";
import { describeShare } from "@/lib/format/format-share";
import type { SurvivalCurve, SurvivalStep } from "@/lib/statistics/survival/kaplan-meier";
import type { NumbersAtAge } from "@/lib/statistics/survival/numbers-at-ages";
import { axesFor, byMonths, type CurvePoint, type DrawnCurve, largestJump, stopRule } from "./drawn-curve";

/** Share failed by age: steps upwards, drawn only as far as they can be trusted. */
export type StepCurve =
  | DrawnSteps
  | { readonly kind: "nobody-failed"; readonly untilMonths: number }
  | { readonly kind: "nobody-watched" }
  /** One more failure would already move the first step by more than the limit. */
  | { readonly kind: "too-few-to-draw" };

export interface DrawnSteps extends DrawnCurve {
  readonly kind: "steps";
  readonly watched: readonly WatchedAt[];
}

/** Under the axis: the three add up to all that had come under watch by that age, those watched from a later age included. */
export interface WatchedAt {
  readonly months: number;
  readonly stillRunning: number;
  readonly failed: number;
  readonly lost: number;
}

/**
 * @param curve    ages in days
 * @param watched  numbers at the ages to print under the axis, in days
 */
export function stepCurve(curve: SurvivalCurve, watched: readonly NumbersAtAge[]): StepCurve {
  if (curve.kind === "no-exposure") return { kind: "nobody-watched" };
  if (curve.kind === "no-events") return { kind: "nobody-failed", untilMonths: curve.lastAge / daysPerMonth };
  const trusted = trustedSteps(curve.steps);
  const last = trusted.at(-1);
  if (last === undefined) return { kind: "too-few-to-draw" };
  const next = curve.steps[trusted.length];
  const endMonths = trustedUntil(last, next?.age ?? Number.POSITIVE_INFINITY, watched) / daysPerMonth;
  const stopsEarly = endMonths < curve.lastAge / daysPerMonth - 1;
  const points = [start(trusted[0]?.atRisk ?? 0), ...trusted.map(toPoint)];
  const shown = watched.map(toWatched).filter(({ months }) => months <= endMonths + 1e-9);
  return {
    kind: "steps",
    ...axesFor("failed, in 100", endMonths, Math.min(1, Math.max(...points.map((point) => point.high)))),
    points,
    endMonths,
    stopped: stopsEarly ? `The line stops ${stopRule}` : undefined,
    watched: shown,
    under: [
      { name: "still running", at: shown.map(({ months, stillRunning }) => ({ months, count: stillRunning })) },
      { name: "failed", at: shown.map(({ months, failed }) => ({ months, count: failed })) },
      { name: "lost sight of", at: shown.map(({ months, lost }) => ({ months, count: lost })) },
    ],
  };
}

/** The line ends before the first step at which a single life among those left weighs too much. */
function trustedSteps(steps: readonly SurvivalStep[]): SurvivalStep[] {
  const stop = steps.findIndex(({ survival, events, atRisk }) => {
    const before = events < atRisk ? survival / (1 - events / atRisk) : 1;
    return before / atRisk > largestJump;
  });
  return stop === -1 ? [...steps] : steps.slice(0, stop);
}

/** A tread may go on as long as the counts beside it still bear the same rule, at the ages at which they were counted. */
function trustedUntil(last: SurvivalStep, nextAge: number, watched: readonly NumbersAtAge[]): number {
  const borne = watched
    .filter(({ age, atRisk }) => age > last.age && age < nextAge && last.survival / atRisk <= largestJump)
    .map(({ age }) => age);
  return Math.max(last.age, ...borne);
}

function toPoint({ age, survival, atRisk, limits }: SurvivalStep): CurvePoint {
  const failed = 1 - survival;
  const low = limits.kind === "limits" ? 1 - limits.high : failed;
  const high = limits.kind === "limits" ? 1 - limits.low : failed;
  const months = age / daysPerMonth;
  const spoken = `${describeShare(failed, low, high)} failed ${byMonths(months)}, ${formatCount(atRisk)} still running before it`;
  return { months, failed, low, high, atRisk, spoken };
}

function start(atRisk: number): CurvePoint {
  return { months: 0, failed: 0, low: 0, high: 0, atRisk, spoken: "" };
}

function toWatched({ age, entered, failed, lost }: NumbersAtAge): WatchedAt {
  return { months: age / daysPerMonth, stillRunning: entered - failed - lost, failed, lost };
}
