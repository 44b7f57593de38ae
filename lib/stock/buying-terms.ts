import type { Criticality } from "@/lib/domain/stock";

/** How a part is bought and how sure the company wants to be. */
export interface BuyingTerms {
  /** Days from order to delivery: one entry as the supplier states it, or several deliveries as they were. */
  readonly leadDays: readonly number[];
  readonly reviewDays: number;
  readonly pack: number;
  readonly orderCostCents: number;
  readonly holdingPercent: number;
  /** Wanted: short in no more than one of so many waits for a delivery. */
  readonly shortOneIn: number;
}

/** What is taken where nobody said otherwise, and shown as such. Own choice, no source. */
export const assumedTerms: BuyingTerms = {
  leadDays: [],
  reviewDays: 7,
  pack: 1,
  orderCostCents: 0,
  holdingPercent: 20,
  shortOneIn: 10,
};

/** Days that are taken where neither supplier nor an order says how long it takes. Own choice, no source. */
export const assumedLeadDays = 7;

/** Where a form begins for each word. Own choice, no source. */
export const usualRisk: Readonly<Record<Criticality, number>> = { vital: 20, usual: 10, "can wait": 5 };
