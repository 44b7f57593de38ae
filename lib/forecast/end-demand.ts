import { daysPerMonth } from "@/lib/failures/rate-question";
import { type CountDistribution, empiricalDistribution } from "@/lib/statistics/demand/count-distribution";
import { seededDraws, streamSeed } from "@/lib/statistics/demand/seeded-draws";
import { requirePositive, requireWholeNumber } from "@/lib/statistics/require";
import { type CountedShare, drawShare, requireShare } from "./counted-share";
import { drawLives } from "./draw-life";
import { Fleet, requireFleet } from "./fleet";
import type { FleetFacts } from "./fleet-facts";

export interface EndDemandQuestion {
  readonly facts: Extract<FleetFacts, { kind: "fleet" }>;
  /** How often a failure took this part. */
  readonly usesPart: CountedShare;
  /** Pieces per repair that took it, on average over past repairs, 1 or more. */
  readonly pieces: number;
  readonly futures: number;
  readonly seed: number;
}

export interface EndDemand {
  readonly demand: CountDistribution;
  /** Months until the last unit has left, in half of the futures; none where some are left after the longest time. */
  readonly medianMonths: number | undefined;
  readonly longestMonths: number;
}

/** No fleet of household machines is followed longer than this. Own choice, no source. */
const longestMonths = 480;
/** What is renewed within a step stays to its end, so that longer ones would keep units a little too long. */
const stepMonths = 3;

/**
 * Pieces that today's fleet will still take until its last unit has left service: futures of ageing, failing, renewal
 * and retirement with nothing installed any more, each with a life and a share that may be the true ones.
 * @throws RangeError for an argument outside its range
 * Source: as `componentRepairs`. Checked: tests/forecast/end-demand.test.ts, against the mean of a constant hazard by hand.
 */
export function endDemand({ facts, usesPart, pieces, futures, seed }: EndDemandQuestion): EndDemand {
  requireWholeNumber("futures", futures);
  requirePositive("futures", futures);
  requirePositive("pieces", pieces);
  requireShare("usesPart", usesPart);
  const { inService, leaving, fit } = facts;
  requireFleet({ inService, leaving, wear: [] });
  const lives = drawLives(fit, futures, seededDraws(streamSeed(seed, 1)));
  const draws = seededDraws(streamSeed(seed, 2));
  const leavingStep = 1 - (1 - leaving) ** stepMonths;
  const ends: (number | undefined)[] = [];
  const counts = lives.map((life) => {
    const share = drawShare(usesPart, draws);
    const fleet = new Fleet({ inService, leaving, wear: [] }, (age) => life(age * daysPerMonth), draws);
    let repairs = 0;
    let months = 0;
    for (; months < longestMonths && fleet.units() > 0; months += stepMonths) {
      repairs += draws.binomial(fleet.live({ months: stepMonths, wear: 1, leaving: leavingStep, incoming: 0 }), share);
      fleet.tidy();
    }
    ends.push(fleet.units() > 0 ? undefined : months);
    return Math.round(repairs * pieces);
  });
  const median = ends.map((end) => end ?? Number.POSITIVE_INFINITY).toSorted((a, b) => a - b)[Math.floor(futures / 2)];
  return {
    demand: empiricalDistribution(counts),
    medianMonths: median === undefined || !Number.isFinite(median) ? undefined : median,
    longestMonths,
  };
}
