import { type SeededDraws, seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { requirePositive, requireWholeNumber } from "@/lib/statistics/require";

export interface TruckTrialQuestion {
  /** Visits of the past that took parts: what each took, and how many such visits are expected for it. */
  readonly visits: readonly TriedVisit[];
  /** Days that they are from, and days from one filling of the truck to the next. */
  readonly overDays: number;
  readonly fillingDays: number;
  /** Pieces of each part after every filling: as the truck is, and as it would be. */
  readonly before: ReadonlyMap<string, number>;
  readonly after: ReadonlyMap<string, number>;
  readonly futures: number;
  readonly seed: number;
}

export interface TriedVisit {
  readonly parts: ReadonlyMap<string, number>;
  /** Above 0; 1 where as many come as came. */
  readonly trend: number;
}

/** Shares of the visits of a year that are done at once, in 0..1. */
export interface TruckTrial {
  readonly before: ShareRange;
  readonly after: ShareRange;
  /** The second less the first, in the same future: it can be surer than either. */
  readonly gain: ShareRange;
}

/** Nine futures in ten lie from low to high. */
export interface ShareRange {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

/**
 * What a truck would do in years that are like the last one: each future weighs the past visits anew, as far as one year
 * tells how often each kind comes, and lets them come by chance from filling to filling. A visit is done at once when
 * all of its parts are there, and takes them; parts of one visit are those that were taken together.
 * @returns undefined where no visit is known
 * @throws RangeError for an argument outside its range
 * Source: the Bayesian bootstrap, Rubin (1981), Annals of Statistics 9, 130-134.
 * Checked: tests/stock/truck-trial.test.ts, by hand and against one part's fill rate.
 */
export function truckTrial(question: TruckTrialQuestion): TruckTrial | undefined {
  const { visits, overDays, fillingDays, before, after, futures, seed } = question;
  requirePositive("overDays", overDays);
  requirePositive("fillingDays", fillingDays);
  requireWholeNumber("futures", futures);
  requirePositive("futures", futures);
  if (visits.length === 0) return undefined;
  const draws = seededDraws(seed);
  const fillings = Math.max(1, Math.round(overDays / fillingDays));
  const years = Array.from({ length: futures }, () => {
    const coming = weighedVisits(visits, draws);
    const done = { before: 0, after: 0, of: 0 };
    for (let filling = 0; filling < fillings; filling++) {
      const trucks = { before: new Map(before), after: new Map(after) };
      for (let left = draws.poisson((coming.total * fillingDays) / overDays); left > 0; left--) {
        const { parts } = coming.pick(draws.uniform());
        done.of += 1;
        if (isDone(trucks.before, parts)) done.before += 1;
        if (isDone(trucks.after, parts)) done.after += 1;
      }
    }
    const of = Math.max(1, done.of);
    return { before: done.before / of, after: done.after / of };
  });
  return {
    before: rangeOf(years.map((year) => year.before)),
    after: rangeOf(years.map((year) => year.after)),
    gain: rangeOf(years.map((year) => year.after - year.before)),
  };
}

/** Past visits, each as often as one year lets it be thought. */
function weighedVisits(visits: readonly TriedVisit[], draws: SeededDraws) {
  let total = 0;
  const upTo = visits.map(({ trend }) => {
    total += trend * draws.gamma(1);
    return total;
  });
  const first = { parts: new Map<string, number>(), trend: 1 };
  return {
    total,
    pick: (uniform: number): TriedVisit => {
      let [low, high] = [0, upTo.length - 1];
      while (low < high) {
        const middle = (low + high) >> 1;
        if ((upTo[middle] ?? 0) > uniform * total) high = middle;
        else low = middle + 1;
      }
      return visits[low] ?? first;
    },
  };
}

/** Takes the parts where all are there. */
function isDone(truck: Map<string, number>, parts: ReadonlyMap<string, number>): boolean {
  for (const [part, pieces] of parts) if ((truck.get(part) ?? 0) < pieces) return false;
  for (const [part, pieces] of parts) truck.set(part, (truck.get(part) ?? 0) - pieces);
  return true;
}

function rangeOf(shares: readonly number[]): ShareRange {
  const sorted = shares.toSorted((a, b) => a - b);
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))] ?? 0;
  return { mean: shares.reduce((sum, share) => sum + share, 0) / shares.length, low: at(0.05), high: at(0.95) };
}
