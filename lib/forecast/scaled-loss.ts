import {
  type CountDistribution,
  countQuantile,
  empiricalDistribution,
} from "@/lib/statistics/demand/count-distribution";
import { pinballLoss } from "@/lib/statistics/demand/pinball-loss";

/** Quantiles at which forecasts are judged: the middle, and the upper ones that stock is kept for. */
export const judgedQuantiles = [0.5, 0.8, 0.9, 0.95, 0.99] as const;

/**
 * Per judged quantile, the mean loss of the history's own empirical quantile on the history itself: what a quantile
 * costs that knows the months it is judged by. A loss of 1 after scaling is as good as that.
 * @param counts at least one month
 * @returns 0 for a quantile of counts that never change
 */
export function lossScale(counts: readonly number[]): readonly number[] {
  const own = empiricalDistribution(counts);
  return judgedQuantiles.map((probability) => {
    const quantile = countQuantile(own, probability);
    const losses = counts.map((outcome) => pinballLoss({ quantile, probability, outcome, scale: "plain" }));
    return losses.reduce((sum, loss) => sum + loss, 0) / losses.length;
  });
}

/** Mean over the judged quantiles of a forecast's loss over the scale; quantiles whose scale is 0 are left out. */
export function scaledQuantileLoss(
  forecast: CountDistribution,
  outcome: number,
  scale: readonly number[],
): number | undefined {
  const losses = judgedQuantiles.flatMap((probability, i) => {
    const unit = scale[i] ?? 0;
    if (unit <= 0) return [];
    const quantile = countQuantile(forecast, probability);
    return [pinballLoss({ quantile, probability, outcome, scale: "plain" }) / unit];
  });
  return losses.length === 0 ? undefined : losses.reduce((sum, loss) => sum + loss, 0) / losses.length;
}
