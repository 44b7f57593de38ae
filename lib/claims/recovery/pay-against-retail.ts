import type { Currency } from "@/lib/domain/money";
import type { ProductType } from "@/lib/domain/product-type";

/** Amounts of one kind of work: repairs of one component of one product type. */
export interface WorkAmounts {
  readonly productType: ProductType;
  readonly component: string;
  readonly currency: Currency;
  /** Labour and trip together, in whole cents, each amount with how many jobs had it. */
  readonly amounts: readonly { readonly value: number; readonly count: number }[];
}

export interface PayerWork extends WorkAmounts {
  readonly payer: string;
}

/** A middle value with limits that hold it, or how few there were. */
export type Middle<Found> = (amounts: WorkAmounts["amounts"]) => Found;

export interface PayAgainstRetail<Found> {
  readonly payer: string;
  readonly productType: ProductType;
  readonly component: string;
  readonly currency: Currency;
  readonly jobs: number;
  /** What the payer's terms pay for the work of a repair. */
  readonly pays: Found;
  /** What customers paid for the work of the same kind of repair. */
  readonly retail: Found;
}

/**
 * Each payer's pay for each kind of work beside what the same work earned from customers, in the same currency. Only
 * labour and trip are compared: of a part neither its retail price nor what it cost on other jobs says what it earns.
 * @param middle  how many amounts become one figure with its limits
 */
export function payAgainstRetail<Found>(
  { paid, retail }: { readonly paid: readonly PayerWork[]; readonly retail: readonly WorkAmounts[] },
  middle: Middle<Found>,
): readonly PayAgainstRetail<Found>[] {
  const retailOf = new Map(retail.map((work) => [keyOf(work), work.amounts]));
  return paid
    .map(({ payer, productType, component, currency, amounts }) => ({
      payer,
      productType,
      component,
      currency,
      jobs: amounts.reduce((sum, { count }) => sum + count, 0),
      pays: middle(amounts),
      retail: middle(retailOf.get(keyOf({ productType, component, currency })) ?? []),
    }))
    .sort((a, b) => a.payer.localeCompare(b.payer, "en") || b.jobs - a.jobs || a.component.localeCompare(b.component));
}

function keyOf({ productType, component, currency }: Omit<WorkAmounts, "amounts">): string {
  return `${productType}|${component}|${currency}`;
}
