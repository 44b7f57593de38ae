import type { CountDistribution } from "@/lib/statistics/demand/count-distribution";
import { requireNonNegative, requirePositive, requireWholeNumber } from "@/lib/statistics/require";
import { Truck } from "./truck";
import { truckBound } from "./truck-bound";

export interface TruckPart {
  readonly part: string;
  /** Cents of one piece, above 0. */
  readonly unitCents: number;
  /** Pieces that the truck's visits need between two fillings. */
  readonly demand: CountDistribution;
  /** Pieces that the truck has already, and that stay. */
  readonly carried: number;
}

/** Visits that need the same parts, all of them, to be done at once. */
export interface VisitKind {
  readonly parts: readonly string[];
  /** Expected visits of this kind between two fillings. */
  readonly visits: number;
}

export interface TruckQuestion {
  readonly parts: readonly TruckPart[];
  readonly kinds: readonly VisitKind[];
  readonly budgetCents: number;
}

export interface TruckStock {
  /** What to add, best first: each step raised the visits done at once most per cent of money. */
  readonly steps: readonly TruckStep[];
  readonly spentCents: number;
  /** Expected visits done at once: as the truck is, as it will be, and what no choice within the budget can exceed. */
  readonly before: number;
  readonly after: number;
  readonly atMost: number;
  /** Expected visits in all. */
  readonly visits: number;
}

export interface TruckStep {
  /** One part, or several that only help together. */
  readonly added: readonly string[];
  readonly cents: number;
  /** Visits done at once after this step. */
  readonly after: number;
}

/**
 * What a truck should carry for a sum of money, so that most visits are done at once: a visit is done when each of its
 * parts is there, and a part is there as often as the share of its demand that its stock meets. Chosen greedily by
 * visits gained per cent; then again after each dear purchase as a first one, since it may be worth more than all the
 * cheap ones that leave too little for it. `atMost` tells how far from the best the choice can be.
 * Parts of one visit are taken as there or not there independently of each other.
 * @throws RangeError for an argument outside its range, or a kind of visit with a part that is not listed
 * Source: greedy choice with diminishing returns, Fox (1966), Management Science 13, 210-216; the bound is that of the
 *   knapsack whose last piece may be cut, Dantzig (1957), Operations Research 5, 266-288; first purchases tried in turn
 *   as in Sahni (1975), Journal of the ACM 22, 115-124.
 * Checked: tests/stock/truck-stock.test.ts, against trying every choice.
 */
export function truckStock(question: TruckQuestion): TruckStock {
  requireQuestion(question);
  const before = new Truck(question.parts, question.kinds).visitsDone();
  const offers = pricedPurchases(question);
  const dear = offers.filter(({ cents }) => cents >= dearShare * question.budgetCents);
  const tried = [undefined, ...dear].map((first) => greedySteps(question, { offers, before, first }));
  const doneBy = (choice: readonly TruckStep[]) => choice.at(-1)?.after ?? before;
  const steps = tried.reduce((best, one) => (doneBy(one) > doneBy(best) + 1e-12 ? one : best));
  return {
    steps,
    spentCents: steps.reduce((sum, { cents }) => sum + cents, 0),
    before,
    after: doneBy(steps),
    atMost: truckBound(question),
    visits: question.kinds.reduce((sum, { visits }) => sum + visits, 0),
  };
}

/** Of the budget: what costs less leaves room enough for anything after it. Own choice, no source. */
const dearShare = 0.05;

interface Offer {
  readonly added: readonly string[];
  readonly cents: number;
}

function greedySteps(
  question: TruckQuestion,
  {
    offers,
    before,
    first,
  }: { readonly offers: readonly Offer[]; readonly before: number; readonly first: Offer | undefined },
): readonly TruckStep[] {
  const truck = new Truck(question.parts, question.kinds);
  const steps: TruckStep[] = [];
  let [left, done] = [question.budgetCents, before];
  let next: Offer | undefined = first !== undefined && first.cents <= left ? first : bestOffer(truck, offers, left);
  while (next !== undefined) {
    done += truck.gainOf(next.added);
    truck.add(next.added);
    left -= next.cents;
    steps.push({ ...next, after: done });
    next = bestOffer(truck, offers, left);
  }
  return steps;
}

function bestOffer(truck: Truck, offers: readonly Offer[], left: number): Offer | undefined {
  let [best, most]: [Offer | undefined, number] = [undefined, 1e-15];
  for (const offer of offers) {
    if (offer.cents > left) continue;
    const perCent = truck.gainOf(offer.added) / offer.cents;
    if (perCent > most) [best, most] = [offer, perCent];
  }
  return best;
}

/** One of each part alone, or one of each part of a kind of visit: a pump without its clamps does nothing. */
function pricedPurchases({ parts, kinds }: TruckQuestion): readonly Offer[] {
  const priceOf = new Map(parts.map(({ part, unitCents }) => [part, unitCents]));
  const together = new Map(
    kinds.filter((kind) => kind.parts.length > 1).map((kind) => [kind.parts.join("\n"), kind.parts]),
  );
  return [...parts.map(({ part }) => [part]), ...together.values()].map((added: readonly string[]) => ({
    added,
    cents: added.reduce((sum, part) => sum + (priceOf.get(part) ?? 0), 0),
  }));
}

function requireQuestion({ parts, kinds, budgetCents }: TruckQuestion): void {
  requireNonNegative("budgetCents", budgetCents);
  const known = new Set<string>();
  for (const [i, { part, unitCents, carried }] of parts.entries()) {
    if (known.has(part)) throw new RangeError(`parts[${i}].part ${part} is listed twice`);
    known.add(part);
    requirePositive(`parts[${i}].unitCents`, unitCents);
    requireWholeNumber(`parts[${i}].carried`, carried);
  }
  for (const [i, kind] of kinds.entries()) {
    requireNonNegative(`kinds[${i}].visits`, kind.visits);
    if (new Set(kind.parts).size < kind.parts.length) throw new RangeError(`kinds[${i}].parts lists a part twice`);
    const stray = kind.parts.find((name) => !known.has(name));
    if (stray !== undefined) throw new RangeError(`kinds[${i}].parts holds ${stray}, which is not among the parts`);
  }
}
