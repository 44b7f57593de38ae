import { fitWeibull, type WeibullFit } from "@/lib/statistics/life/fit-weibull";
import type { FitSource } from "@/lib/statistics/life/life-sample";
import type { LifeRow } from "@/lib/statistics/survival/life-rows";

export const options = { confidence: 0.95, minimumEvents: 1 } as const;

/** The fit, where there must be one. */
export function fitted(source: FitSource): WeibullFit {
  const fit = fitWeibull(source, options);
  if (fit.kind !== "fitted") throw new Error(`expected a fit, got ${fit.reason}`);
  return fit;
}

/** Weibull log-likelihood of single rows, written out: shares no code with the fitted one. */
export function logLikelihoodOf(rows: readonly LifeRow[], shape: number, scale: number): number {
  return rows.reduce((sum, { entry, exit, event, count }) => {
    const lived = (exit / scale) ** shape - (entry / scale) ** shape;
    const hazard = event ? Math.log((shape / scale) * (exit / scale) ** (shape - 1)) : 0;
    return sum + count * (hazard - lived);
  }, 0);
}
