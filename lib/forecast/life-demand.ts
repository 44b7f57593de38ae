// Demand from lives: how many units stand at which age, and when what they carry fails.
import { seededDraws, streamSeed } from "@/lib/statistics/demand/seeded-draws";
import { requirePositive, requireWholeNumber } from "@/lib/statistics/require";
import { type CountedShare, drawShare, requireShare } from "./counted-share";
import type { CumulativeHazard } from "./draw-life";
import { type AgeGroup, Fleet, type FleetSignal, requireFleet } from "./fleet";
import type { DemandPaths } from "./paths";

export interface RepairQuestion {
  /** Lives that may be the true one, one per future drawn; ages in months. See `drawLives`. */
  readonly lives: readonly CumulativeHazard[];
  readonly inService: readonly AgeGroup[];
  /** Months ahead, 1 to 24. */
  readonly horizon: number;
  /** Units newly installed in each coming month; shorter than the horizon means none after. */
  readonly incoming: readonly number[];
  /** Chance that a unit leaves service in a month, 0..1. */
  readonly leaving: number;
  /** How often a failure becomes a repair of ours. */
  readonly ourShare: CountedShare;
  /** Wear of each coming month over an even one, where data show a season; shorter than the horizon means 1 after. */
  readonly wear: readonly number[];
  /** Signals that age groups point to by their place in this list; none where it is left out. */
  readonly signals?: readonly FleetSignal[];
  /** Components with different seeds are independent of each other. */
  readonly seed: number;
}

export interface PartUseQuestion {
  /** How often a repair takes this part. */
  readonly usesPart: CountedShare;
  /** Pieces per repair that takes the part: one number, 1 or more, or how many past repairs took 1, 2, 3 … of it. */
  readonly quantity: number | readonly number[];
  readonly seed: number;
}

export type FleetQuestion = RepairQuestion & PartUseQuestion;

/**
 * Futures of the demand for one part, month by month: for each possible life the fleet is let age, fail, be renewed,
 * grow and leave, and the failures become repairs and parts by chance. The spread of the futures is therefore that of
 * the counts and that of what is not known about life and shares. One seed gives one answer.
 * @returns one row per life, one number of parts per month
 * @throws RangeError for an argument outside its range
 * Source: Meeker & Escobar (1998), Statistical Methods for Reliability Data, chapter 12; renewal of the replaced.
 * Checked: tests/forecast/life-demand.test.ts, against expected counts by hand.
 */
export function lifeDemand(question: FleetQuestion): DemandPaths {
  return partsOfRepairs(componentRepairs(question), question);
}

/**
 * Futures of a component's repairs. The parts of one component are drawn from one set of these, so that they add up in
 * every future: a month of many failures takes many of each.
 */
export function componentRepairs(question: RepairQuestion): DemandPaths {
  requireRepairs(question);
  const draws = seededDraws(streamSeed(question.seed, 1));
  return question.lives.map((hazard) => {
    const share = drawShare(question.ourShare, draws);
    const fleet = new Fleet(question, hazard, draws);
    return Array.from({ length: question.horizon }, (_, month) => {
      const failed = fleet.live({
        months: 1,
        wear: question.wear[month] ?? 1,
        leaving: question.leaving,
        incoming: question.incoming[month] ?? 0,
      });
      return draws.binomial(failed, share);
    });
  });
}

/** Pieces of one part that repairs take, future by future. @throws RangeError for an argument outside its range */
export function partsOfRepairs(repairs: DemandPaths, { usesPart, quantity, seed }: PartUseQuestion): DemandPaths {
  requireShare("usesPart", usesPart);
  const pieces = quantityShares(quantity);
  const draws = seededDraws(streamSeed(seed, 2));
  return repairs.map((row) => {
    const share = drawShare(usesPart, draws);
    return row.map((count) => {
      let left = draws.binomial(count, share);
      let [sum, rest] = [0, 1];
      for (const { each, chance } of pieces) {
        const some = draws.binomial(left, Math.min(1, chance / rest));
        sum += some * each;
        left -= some;
        rest -= chance;
        if (left === 0) break;
      }
      return sum;
    });
  });
}

function quantityShares(quantity: number | readonly number[]): readonly { each: number; chance: number }[] {
  if (typeof quantity === "number") {
    requireWholeNumber("quantity", quantity);
    requirePositive("quantity", quantity);
    return [{ each: quantity, chance: 1 }];
  }
  for (const [i, repairs] of quantity.entries()) requireWholeNumber(`quantity[${i}]`, repairs);
  const total = quantity.reduce((sum, repairs) => sum + repairs, 0);
  requirePositive("sum of quantity", total);
  return quantity.flatMap((repairs, i) => (repairs > 0 ? [{ each: i + 1, chance: repairs / total }] : []));
}

function requireRepairs(question: RepairQuestion): void {
  const { horizon, incoming } = question;
  if (question.lives.length === 0) throw new RangeError("lives must hold at least one");
  requireWholeNumber("horizon", horizon);
  if (horizon < 1 || horizon > 24) throw new RangeError(`horizon must lie in 1..24 months; it is ${horizon}`);
  for (const [month, units] of incoming.entries()) requireWholeNumber(`incoming[${month}]`, units);
  requireFleet(question);
  requireShare("ourShare", question.ourShare);
}
