import type { Estimate, ShareMethod } from "./estimate";
import { agrestiCoull } from "./intervals/agresti-coull";
import { binomialLikelihood } from "./intervals/binomial-likelihood";
import { binomialMidP } from "./intervals/binomial-mid-p";
import type { BinomialTrials } from "./intervals/binomial-trials";
import { clopperPearson } from "./intervals/clopper-pearson";
import type { Interval } from "./intervals/interval";
import { jeffreys } from "./intervals/jeffreys";
import { multinomialScores } from "./intervals/multinomial-scores";
import { wilson } from "./intervals/wilson";
import { limits } from "./rate-estimate";

/**
 * A share of trials as an Estimate, by the named interval.
 * @throws RangeError for an argument outside its range
 * Checked: tests/statistics/estimates.test.ts.
 */
export function shareEstimate({ events, trials, level, method }: ShareEstimateInput): Estimate {
  const outer = byMethod(method, { events, trials, confidence: level });
  const inner = byMethod(method, { events, trials, confidence: 0.5 });
  return { ...limits(outer, inner), events, n: trials, level, method, basis: { kind: "share" } };
}

export interface ShareEstimateInput {
  readonly events: number;
  readonly trials: number;
  readonly level: number;
  readonly method: ShareMethod;
}

/** Several shares of one whole, whose intervals hold all together at the level (Goodman). */
export function sharesOfWhole({ counts, level }: { counts: readonly number[]; level: number }): readonly Estimate[] {
  const outer = multinomialScores({ counts, confidence: level, method: "goodman" });
  const inner = multinomialScores({ counts, confidence: 0.5, method: "goodman" });
  const n = counts.reduce((total, count) => total + count, 0);
  return counts.flatMap((events, i) => {
    const wide = outer[i];
    const narrow = inner[i];
    if (wide === undefined || narrow === undefined) return [];
    return [
      { ...limits(wide, narrow), events, n, level, method: "goodman" as const, basis: { kind: "share" as const } },
    ];
  });
}

function byMethod(method: ShareMethod, trials: BinomialTrials): Interval {
  switch (method) {
    case "wilson":
      return wilson({ ...trials, continuityCorrection: false });
    case "wilson-continuity":
      return wilson({ ...trials, continuityCorrection: true });
    case "clopper-pearson":
      return clopperPearson(trials);
    case "binomial-mid-p":
      return binomialMidP(trials);
    case "binomial-likelihood":
      return binomialLikelihood(trials);
    case "jeffreys":
      return jeffreys(trials);
    case "agresti-coull":
      return agrestiCoull(trials);
  }
}
