import type { RefusedFit } from "@/lib/statistics/life/fit-location-scale";
import { fitWeibull, type WeibullFit } from "@/lib/statistics/life/fit-weibull";
import { type MeanCumulative, meanCumulativeFunction } from "@/lib/statistics/recurrence/mean-cumulative-function";
import { kaplanMeier, type SurvivalCurve } from "@/lib/statistics/survival/kaplan-meier";
import { type NumbersAtAge, numbersAtAges } from "@/lib/statistics/survival/numbers-at-ages";
import type { ExposureCells } from "./cells";
import { componentFlows } from "./component-flows";
import { describeShape, type LifeShape } from "./life-shape";
import { daysPerYear } from "./rate-question";
import { unitHistories } from "./unit-histories";
import type { LifeQuestion } from "./visit-spells";

/** Under this many failures a fitted life would be a guess drawn as a curve. */
export const fewestFailuresForFit = 5;

export interface ComponentLife {
  readonly question: LifeQuestion;
  readonly spells: number;
  readonly failures: number;
  /** Share failed by each age in days of the component, without assuming a shape. */
  readonly curve: SurvivalCurve;
  /** At whole years of age, as far as the curve goes: still running, failed, lost sight of. */
  readonly atYears: readonly NumbersAtAge[];
  readonly weibull: WeibullFit | RefusedFit;
  readonly shape: LifeShape;
  /** Failures per unit by age of the unit, counting repeats. */
  readonly recurrence: MeanCumulative;
}

/** Everything about when one component fails; ages in days. A failure on day 0 counts in the fit as within half a day. */
export function componentLife(cells: ExposureCells, question: LifeQuestion): ComponentLife {
  const confidence = question.level;
  const flows = componentFlows(cells, question);
  const curve = kaplanMeier(flows, { confidence, interval: "log-log" });
  const weibull = fitWeibull(flows, {
    confidence,
    minimumEvents: fewestFailuresForFit,
    failedAtZero: { within: 0.5 },
  });
  return {
    question,
    spells: total(flows.entered),
    failures: total(flows.events),
    curve,
    atYears: numbersAtAges(flows, wholeYears(curve)),
    weibull,
    shape: describeShape(weibull),
    recurrence: meanCumulativeFunction(unitHistories(cells, question), {
      confidence,
      variance: "robust",
      interval: "log",
    }),
  };
}

/** Whole years, or every second, third… so that no more than nine are to be read side by side. */
function wholeYears(curve: SurvivalCurve): number[] {
  if (curve.kind === "no-exposure") return [0];
  const years = Math.floor(curve.lastAge / daysPerYear);
  const apart = Math.max(1, Math.ceil(years / 8));
  return Array.from({ length: Math.floor(years / apart) + 1 }, (_, index) => index * apart * daysPerYear);
}

function total(column: Float64Array): number {
  return column.reduce((sum, count) => sum + count, 0);
}
