import type { LifeModel } from "@/lib/failures/life-model";
import { daysPerMonth } from "@/lib/failures/rate-question";
import { describeShare } from "@/lib/format/format-share";
import { axesFor, byMonths, type CurvePoint, type DrawnCurve } from "./drawn-curve";

/** The smooth line of a fitted life over the steps that it was fitted to, with its range at a few ages. */
export interface ModelLine {
  readonly points: readonly { readonly months: number; readonly failed: number }[];
  readonly limits: readonly Omit<CurvePoint, "atRisk">[];
}

/** The line ends where the steps end, so that it is never drawn where nothing was seen. */
export function modelLine({ line, chances }: LifeModel, { endMonths }: DrawnCurve): ModelLine {
  return {
    points: line
      .map(({ age, failed }) => ({ months: age / daysPerMonth, failed }))
      .filter(({ months }) => months <= endMonths + 1e-9),
    limits: chances
      .map(({ years, failed, low, high }) => ({
        months: 12 * years,
        failed,
        low,
        high,
        spoken: `fitted life: ${describeShare(failed, low, high)} failed ${byMonths(12 * years)}`,
      }))
      .filter(({ months }) => months <= endMonths + 1e-9),
  };
}

/** The steps on axes that hold the model's ranges too. */
export function withRoomFor<Curve extends DrawnCurve>(curve: Curve, model: ModelLine): Curve {
  const heights = [...model.points.map(({ failed }) => failed), ...model.limits.map(({ high }) => high)];
  const height = Math.max(...heights, ...curve.points.map(({ high }) => high));
  return { ...curve, ...axesFor(curve.unit, curve.endMonths, Math.min(1, height)) };
}
