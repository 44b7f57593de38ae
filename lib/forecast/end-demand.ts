import { type CountDistribution, empiricalDistribution } from "@/lib/statistics/demand/count-distribution";
import { seededDraws, streamSeed } from "@/lib/statistics/demand/seeded-draws";
import { type WeibullLife, weibullPosterior } from "@/lib/statistics/life/weibull-posterior";
import { requirePositive, requireWholeNumber } from "@/lib/statistics/require";
import { requireShare } from "./counted-share";
import { failuresToEnd, stepMonths } from "./fleet/failures-to-end";
import type { FleetToEnd } from "./fleet/fleet-to-end";
import { drawUse, type PartUse } from "./fleet/part-use";
import type { PiecesTaken } from "./fleet/pieces-taken";

export interface EndDemandQuestion {
  readonly fleet: FleetToEnd;
  readonly use: PartUse;
  readonly pieces: PiecesTaken;
  readonly futures: number;
  readonly seed: number;
}

export interface EndDemand {
  readonly demand: CountDistribution;
  /** Months until the last machine has left, in half of the futures; none where some are left after the longest time. */
  readonly medianMonths: number | undefined;
  readonly longestMonths: number;
}

/** No fleet of household machines is followed longer than this. Own choice, no source. */
const longestMonths = 480;

/**
 * Pieces that today's fleet will still take until its last machine has left service, with nothing installed any more:
 * each future goes through a life of the component, a life of the machines and a share of repairs that may be the true
 * ones, and then through chance. How long machines stay is as uncertain as how long their components last.
 * @throws RangeError for an argument outside its range
 * Source: as `expectedFailures`. Checked: tests/forecast/end-demand.test.ts, by hand for constant hazards, and by how
 *   many of simulated fleets, followed to their end, lie in the range.
 */
export function endDemand({ fleet, use, pieces, futures, seed }: EndDemandQuestion): EndDemand {
  requireWholeNumber("futures", futures);
  requirePositive("futures", futures);
  requireShare("use.usesPart", use.usesPart);
  const draws = seededDraws(streamSeed(seed, 1));
  const [life, stay] = [weibullPosterior(fleet.lives), weibullPosterior(fleet.stays)];
  const ends: number[] = [];
  const counts = Array.from({ length: futures }, () => {
    const lives: readonly [WeibullLife, WeibullLife] = [life.draw(draws), stay.draw(draws)];
    const { failures, steps } = failuresToEnd(fleet.cohorts, lives, Math.floor(longestMonths / stepMonths));
    ends.push(steps);
    const repairs = draws.poisson(failures * use.perFailure);
    return pieces.draw(draws.binomial(repairs, drawUse(use, draws)), draws);
  });
  const median = ends.toSorted((a, b) => a - b)[Math.floor(futures / 2)] ?? 0;
  return {
    demand: empiricalDistribution(counts),
    medianMonths: median * stepMonths >= longestMonths ? undefined : median * stepMonths,
    longestMonths,
  };
}
