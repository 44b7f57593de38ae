import { normalQuantile } from "../normal";
import { requireProbability } from "../require";
import { type CurveSource, riskTable } from "./risk-table";

/**
 * Cumulative hazard by age (Nelson–Aalen): the expected number of failures a life would meet by each age if it
 * were put back at once after each. Its slope is the hazard, so it shows ageing better than a survival curve.
 * @param source      rows, columns, flows, or a risk table counted elsewhere
 * @param confidence  two-sided level in (0, 1) of the pointwise limits; no default
 * @param interval    `log` stays above 0; `plain` must be cut off at 0; no default
 * @returns one step per age with failures, or `no-events` / `no-exposure` as in `kaplanMeier`; per life
 * @throws RangeError for an argument outside its range
 * Source: Aalen (1978), Annals of Statistics 6, 701-726; variance Σ d / n².
 * Checked: tests/statistics/survival/nelson-aalen.test.ts, against R survfit (ctype = 1).
 */
export function nelsonAalen(source: CurveSource, { confidence, interval }: CumulativeHazardOptions): CumulativeHazard {
  requireProbability("confidence", confidence);
  const table = riskTable(source);
  if (table.ages.length === 0) {
    return table.lastAge > 0 ? { kind: "no-events", lastAge: table.lastAge } : { kind: "no-exposure" };
  }
  const multiplier = -normalQuantile((1 - confidence) / 2);
  let cumulativeHazard = 0;
  let variance = 0;
  const steps = Array.from(table.ages, (age, i) => {
    const atRisk = table.atRisk[i] ?? 0;
    const events = table.events[i] ?? 0;
    cumulativeHazard += events / atRisk;
    variance += events / (atRisk * atRisk);
    const standardError = Math.sqrt(variance);
    const arm = multiplier * standardError;
    const spread = Math.exp(arm / cumulativeHazard);
    const [low, high] =
      interval === "log"
        ? [cumulativeHazard / spread, cumulativeHazard * spread]
        : [Math.max(0, cumulativeHazard - arm), cumulativeHazard + arm];
    return { age, atRisk, events, cumulativeHazard, standardError, low, high };
  });
  return { kind: "curve", steps, lastAge: table.lastAge };
}

export interface CumulativeHazardOptions {
  readonly confidence: number;
  readonly interval: "plain" | "log";
}

export interface CumulativeHazardStep {
  readonly age: number;
  readonly atRisk: number;
  readonly events: number;
  /** Expected failures per life up to and including this age. */
  readonly cumulativeHazard: number;
  readonly standardError: number;
  readonly low: number;
  readonly high: number;
}

export type CumulativeHazard =
  | { readonly kind: "curve"; readonly steps: readonly CumulativeHazardStep[]; readonly lastAge: number }
  | { readonly kind: "no-events"; readonly lastAge: number }
  | { readonly kind: "no-exposure" };
