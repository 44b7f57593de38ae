/** Whole cents (the currency's hundredth) with an ISO 4217 code. Never a float of units. */
export interface Money {
  readonly cents: number;
  readonly currency: Currency;
}

export const currencies = ["USD", "CAD", "EUR", "GBP", "AUD"] as const;
export type Currency = (typeof currencies)[number];
