import type { DemandPaths } from "@/lib/forecast/paths";
import { countBand } from "@/lib/statistics/demand/count-band";
import {
  type CountDistribution,
  countAtMost,
  countMean,
  countQuantile,
} from "@/lib/statistics/demand/count-distribution";
import { assumedLeadDays, type BuyingTerms } from "./buying-terms";
import { demandBetween, monthDays } from "./demand-between";
import { fixedLeadTime, type KnownLeadTime, knownLeadTime, type LeadTime, meanLeadTimeDays } from "./lead-time";
import { orderQuantity } from "./order-quantity";
import { reorderPoint } from "./reorder-point";
import type { StoredLead, StoredOrder, StoredPlan, StoredReorder, StoredSpan } from "./stored-plan";
import { twentyFutures } from "./twenty-futures";

export interface PlanQuestion {
  /** Futures of the part; undefined where nothing is known of its use. */
  readonly paths: DemandPaths | undefined;
  /** Days of the first month of the futures that are gone today. */
  readonly goneDays: number;
  readonly terms: BuyingTerms;
  /** Days that each order on file took. */
  readonly orderDays: readonly number[];
  readonly unitCents: number;
}

/** No order should outlast a year: numbers are superseded meanwhile. Own choice, no source. */
const longestMonths = 12;

/** When to order a part, how many, and how long what lies there lasts. @throws RangeError for terms outside their range */
export function partPlan({ paths, goneDays, terms, orderDays, unitCents }: PlanQuestion): StoredPlan {
  const several = terms.leadDays.length > 1;
  const known = knownLeadTime(
    [...(several ? terms.leadDays : []), ...orderDays],
    several ? undefined : terms.leadDays[0],
  );
  const leadTime = known.kind === "unknown" ? fixedLeadTime(assumedLeadDays) : known.leadTime;
  const { reviewDays, shortOneIn, pack } = terms;
  return {
    lead: storedLead(known, leadTime),
    reviewDays,
    shortOneIn,
    pack,
    reorder: paths === undefined ? { kind: "no-forecast" } : storedReorder(paths, goneDays, leadTime, terms),
    order: paths === undefined ? { kind: "no-demand" } : storedOrder(paths, terms, unitCents),
    twoYears: paths === undefined ? { chanceOfNone: 0, expected: 0, enough: 0 } : storedSpan(paths, goneDays),
  };
}

function storedLead(known: KnownLeadTime, leadTime: LeadTime): StoredLead {
  const mean = meanLeadTimeDays(leadTime);
  const longest = Math.max(...leadTime.map(({ days }) => days));
  switch (known.kind) {
    case "unknown":
      return { kind: "assumed", mean, longest };
    case "stated":
      return { kind: "stated", mean, longest };
    case "observed":
    case "few-orders":
      return { kind: known.kind, orders: known.orders, mean, longest };
  }
}

function storedReorder(
  paths: DemandPaths,
  goneDays: number,
  leadTime: LeadTime,
  { reviewDays, shortOneIn }: BuyingTerms,
): StoredReorder {
  const found = reorderPoint({ paths, goneDays, leadTime, reviewDays, service: 1 - 1 / shortOneIn });
  if (found.kind !== "reorder-point") return found;
  const { demand, level, service, expected } = found;
  const [most, wide] = [countBand(demand, 0.6), countBand(demand, 0.9)];
  return {
    kind: "reorder-point",
    level,
    service,
    expected,
    low60: most.low,
    high60: most.high,
    low90: wide.low,
    high90: wide.high,
    atMost: cumulative(demand),
    twenty: twentyFutures(demand),
  };
}

/** Chances of no more than 0, 1, 2 …, until next to nothing is left. */
function cumulative(demand: CountDistribution): readonly number[] {
  const chances: number[] = [];
  for (let k = 0; k < demand.length; k++) {
    const chance = Math.round(1e5 * countAtMost(demand, k)) / 1e5;
    chances.push(chance);
    if (chance >= 0.9999) break;
  }
  return chances;
}

function storedOrder(paths: DemandPaths, terms: BuyingTerms, unitCents: number): StoredOrder {
  const year = paths.reduce((sum, row) => sum + row.slice(0, 12).reduce((pieces, count) => pieces + count, 0), 0);
  const yearlyDemand = year / paths.length;
  const found = orderQuantity({
    yearlyDemand,
    orderCents: terms.orderCostCents,
    unitCents,
    holdingPerYear: terms.holdingPercent / 100,
    pack: terms.pack,
    longestMonths,
  });
  if (found.kind === "no-demand") return found;
  const { pieces, yearlyCents, setBy } = found;
  return { kind: "quantity", pieces, yearlyDemand, yearlyCents, setBy };
}

function storedSpan(paths: DemandPaths, goneDays: number): StoredSpan {
  const months = paths[0]?.length ?? 0;
  const between = demandBetween(paths, { fromDay: goneDays, toDay: months * monthDays });
  if (between.kind === "beyond-forecast") throw new RangeError("the futures end before themselves");
  const { demand } = between;
  return { chanceOfNone: countAtMost(demand, 0), expected: countMean(demand), enough: countQuantile(demand, 0.95) };
}
