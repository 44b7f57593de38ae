import { countDistribution } from "@/lib/statistics/demand/count-distribution";
import { requirePositive } from "@/lib/statistics/require";
import type { TruckPart, TruckQuestion, VisitKind } from "./truck-stock";

export interface PastVisit {
  /** What the visit took, by part. */
  readonly parts: ReadonlyMap<string, number>;
}

export interface VisitsBetweenFillings {
  /** Visits of one technician that took parts. */
  readonly visits: readonly PastVisit[];
  /** Days that they are from, and days from one filling of the truck to the next. */
  readonly overDays: number;
  readonly fillingDays: number;
  /** Of each part that can be carried: its cost, how many lie in the truck, and how its use is expected to change. */
  readonly known: ReadonlyMap<string, KnownTruckPart>;
  readonly budgetCents: number;
}

export interface KnownTruckPart {
  /** Above 0. */
  readonly unitCents: number;
  readonly carried: number;
  /** Expected use over past use. */
  readonly trend: number;
}

/**
 * What a truck is asked to do between two fillings, from what its technician's visits took. Visits come at random and
 * each takes its pieces, so that a part's demand has the mean λE(q) and the variance λE(q²) of a compound Poisson count.
 * Visits that need a part which cannot be carried, since its cost is not known, are left out.
 * @throws RangeError for days that are not above 0
 */
export function truckQuestion(asked: VisitsBetweenFillings): TruckQuestion & { readonly leftOut: number } {
  const { visits, overDays, fillingDays, known, budgetCents } = asked;
  requirePositive("overDays", overDays);
  requirePositive("fillingDays", fillingDays);
  const share = fillingDays / overDays;
  const kinds = new Map<string, { readonly parts: readonly string[]; visits: number }>();
  const sums = new Map<string, { first: number; second: number }>();
  let leftOut = 0;
  for (const { parts } of visits) {
    const needed = [...parts.keys()].toSorted();
    if (needed.some((part) => !known.has(part))) {
      leftOut += 1;
      continue;
    }
    const trend = needed.reduce((sum, part) => sum + (known.get(part)?.trend ?? 1), 0) / Math.max(1, needed.length);
    const key = needed.join("\n");
    const kind = kinds.get(key) ?? { parts: needed, visits: 0 };
    kind.visits += share * trend;
    kinds.set(key, kind);
    for (const [part, quantity] of parts) {
      const sum = sums.get(part) ?? { first: 0, second: 0 };
      sum.first += share * trend * quantity;
      sum.second += share * trend * quantity ** 2;
      sums.set(part, sum);
    }
  }
  const carried: TruckPart[] = [...sums].map(([part, { first, second }]) => {
    const { unitCents, carried: there } = known.get(part) ?? { unitCents: 1, carried: 0 };
    const demand = countDistribution({ mean: first, variance: second });
    return { part, unitCents, carried: Math.max(0, there), demand };
  });
  return { parts: carried, kinds: [...kinds.values()] satisfies readonly VisitKind[], budgetCents, leftOut };
}
