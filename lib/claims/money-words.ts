import type { Currency } from "@/lib/domain/money";

/** "USD 12.50", for the sentence that says how an amount came about. Whole cents, so nothing is rounded. */
export function centsInWords(cents: number, currency: Currency): string {
  if (!Number.isSafeInteger(cents)) throw new RangeError(`cents: whole number expected: ${cents}`);
  const sign = cents < 0 ? "-" : "";
  const whole = Math.floor(Math.abs(cents) / 100);
  return `${currency} ${sign}${whole}.${String(Math.abs(cents) % 100).padStart(2, "0")}`;
}
