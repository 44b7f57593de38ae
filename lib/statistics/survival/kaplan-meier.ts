import { normalQuantile } from "../normal";
import { requireProbability } from "../require";
import type { Limits } from "./limits";
import { type CurveSource, type RiskTable, riskTable } from "./risk-table";
import { type SurvivalInterval, survivalLimits } from "./survival-limits";

/**
 * Probability of living past each age, estimated without assuming a shape (Kaplan–Meier), with late entry and
 * right censoring. Use it to show what happened; use a fitted life to smooth or to look ahead.
 * @param source      rows, columns, flows, or a risk table counted elsewhere
 * @param confidence  two-sided level in (0, 1) of the pointwise limits; no default
 * @param interval    scale of the limits; no default, the three give different answers
 * @returns one step per age at which failures happened, ascending; before the first step survival is 1.
 *          `no-events`: nobody failed (the curve is 1 up to lastAge, and this estimate of its error is worthless:
 *          ask for an exact limit instead); `no-exposure`: nobody was watched for any time.
 * @throws RangeError for an argument outside its range
 * With late entry the risk set can be one life at an early age; if that life fails the curve falls to 0 and can
 * never rise again although others enter later. That is the estimate; `collapsed` says that it happened.
 * Source: Kaplan and Meier (1958), JASA 53, 457-481; variance Greenwood (1926); late entry Cole and Hudgens (2010).
 * Checked: tests/statistics/survival/kaplan-meier.test.ts, printed tables and R survfit.
 */
export function kaplanMeier(source: CurveSource, options: SurvivalOptions): SurvivalCurve {
  requireProbability("confidence", options.confidence);
  const table = riskTable(source);
  if (table.ages.length === 0) {
    return table.lastAge > 0 ? { kind: "no-events", lastAge: table.lastAge } : { kind: "no-exposure" };
  }
  const steps = survivalSteps(table, options);
  const last = steps.at(-1);
  return {
    kind: "curve",
    steps,
    lastAge: table.lastAge,
    collapsed: last?.survival === 0 && last.age < table.lastAge,
    ...options,
  };
}

export interface SurvivalOptions {
  readonly confidence: number;
  readonly interval: SurvivalInterval;
}

export interface SurvivalStep {
  readonly age: number;
  /** Lives at risk at this age, the failing ones included. */
  readonly atRisk: number;
  readonly events: number;
  /** Probability of living past this age. */
  readonly survival: number;
  /** Greenwood standard error and pointwise limits of survival. */
  readonly limits: Limits;
}

export interface DrawnCurve extends SurvivalOptions {
  readonly kind: "curve";
  readonly steps: readonly SurvivalStep[];
  readonly lastAge: number;
  /** True when survival fell to 0 while lives entered or remained later: the rest of the curve cannot be read. */
  readonly collapsed: boolean;
}

export type SurvivalCurve =
  | DrawnCurve
  | { readonly kind: "no-events"; readonly lastAge: number }
  | { readonly kind: "no-exposure" };

function survivalSteps(table: RiskTable, { confidence, interval }: SurvivalOptions): SurvivalStep[] {
  const multiplier = -normalQuantile((1 - confidence) / 2);
  let survival = 1;
  let logVariance = 0;
  return Array.from(table.ages, (age, i) => {
    const atRisk = table.atRisk[i] ?? 0;
    const events = table.events[i] ?? 0;
    survival *= (atRisk - events) / atRisk;
    // Infinite once everybody at risk has failed; survival is 0 then, and has no limits.
    logVariance += events / (atRisk * (atRisk - events));
    const limits = survivalLimits({ survival, logVariance, multiplier, interval });
    return { age, atRisk, events, survival, limits };
  });
}
