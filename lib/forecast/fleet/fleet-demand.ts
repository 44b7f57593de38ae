import { compoundDistribution } from "@/lib/statistics/demand/compound-distribution";
import { countDistribution } from "@/lib/statistics/demand/count-distribution";
import { seededDraws, streamSeed } from "@/lib/statistics/demand/seeded-draws";
import type { DemandFuture, DemandMethod } from "../demand-method";
import type { DemandPaths } from "../paths";
import type { FleetFailures } from "./fleet-failures";
import type { FleetRecord } from "./fleet-record";
import { drawUse, type PartUse, partUse, shareMoments } from "./part-use";
import type { PiecesTaken } from "./pieces-taken";

export interface PartOfFleet {
  readonly failures: FleetFailures;
  readonly record: FleetRecord;
  readonly pieces: PiecesTaken;
  /** Parts with different seeds are drawn apart, from the same repairs. */
  readonly seed: number;
}

/**
 * Demand for a part from the lives of the machines that carry it: failures expected of them, the share of repairs that
 * takes the part, and the pieces. Repairs of a month are a negative binomial with the mean and variance of all of these
 * together, each of which takes its pieces; futures are drawn from the repairs that all parts of the component have in common.
 * In the back-test lives, comings, goings and seasons are those known when it begins; ages and use are those of each
 * starting point; signals are left out.
 * Checked: tests/forecast/fleet-demand.test.ts, and on invented companies by `npm run bench -- forecast-demo`.
 */
export function fleetDemand(part: PartOfFleet): DemandMethod {
  return {
    key: "fleet-lives",
    name: "lives of the machines in service",
    prepare: (history) => (origin) => {
      const use = partUse(history, part.record, { origin, pieces: part.pieces.mean });
      if (use === undefined) return nothing;
      const monthsAgo = history.length - origin;
      return fleetFuture(part, use, monthsAgo);
    },
  };
}

function fleetFuture(part: PartOfFleet, use: PartUse, monthsAgo: number): DemandFuture {
  let next = 0;
  let drawn: DemandPaths | undefined;
  return {
    months: (horizon) => {
      const expected = monthsAgo === 0 ? part.failures.expected : part.failures.expectedFrom(monthsAgo, horizon);
      return Array.from({ length: horizon }, (_, month) => monthOf(expected, month, { use, pieces: part.pieces }));
    },
    path: (horizon) => {
      drawn ??= fleetPaths(part, use);
      const row = drawn[next++ % drawn.length] ?? [];
      return row.slice(0, horizon);
    },
  };
}

interface Taking {
  readonly use: PartUse;
  readonly pieces: PiecesTaken;
}

function monthOf(expected: readonly (readonly number[])[], month: number, { use, pieces }: Taking) {
  let [sum, squares] = [0, 0];
  for (const row of expected) {
    const mean = row[month] ?? 0;
    sum += mean;
    squares += mean * mean;
  }
  const [failures, square] = [sum / expected.length, squares / expected.length];
  const share = shareMoments(use);
  const repairs = failures * share.mean;
  const doubt = square * share.square - repairs ** 2;
  const counts = countDistribution({ mean: repairs, variance: repairs + Math.max(0, doubt) });
  return compoundDistribution(counts, pieces.shares);
}

/** Pieces month by month in each future of the component's repairs. */
function fleetPaths({ failures, pieces, seed }: PartOfFleet, use: PartUse): DemandPaths {
  const draws = seededDraws(streamSeed(seed, 4));
  return failures.repairs().map((row, future) => {
    const share = drawUse(use, draws);
    const others = share * (use.perFailure - 1);
    const expected = failures.expectedIn(future);
    return row.map((repairs, month) => {
      const took = draws.binomial(repairs, share);
      return pieces.draw(others > 0 ? took + draws.poisson(others * (expected[month] ?? 0)) : took, draws);
    });
  });
}

/** Where no repair of two years took the part, lives tell nothing of it. */
const nothing: DemandFuture = {
  months: (horizon) => Array.from({ length: horizon }, () => Float64Array.of(1)),
  path: (horizon) => new Array<number>(horizon).fill(0),
};
