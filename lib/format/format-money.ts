import type { Currency, Money } from "@/lib/domain/money";

const formatters = new Map<Currency, Intl.NumberFormat>();

/** "USD 1,234.50": the code and not a sign, since three of the currencies share one sign. Exact, because cents are whole. */
export function formatMoney({ cents, currency }: Money): string {
  if (!Number.isSafeInteger(cents)) throw new RangeError(`cents must be a whole number; it is ${cents}`);
  return formatterFor(currency)
    .format(cents / 100)
    .replace(/\u00a0/g, " ");
}

function formatterFor(currency: Currency): Intl.NumberFormat {
  const known = formatters.get(currency);
  if (known !== undefined) return known;
  const made = new Intl.NumberFormat("en-US", { style: "currency", currency, currencyDisplay: "code" });
  formatters.set(currency, made);
  return made;
}
