import type { LeakTotal } from "@/db/queries/money-unclaimed";
import type { Currency } from "@/lib/domain/money";
import { formatCounted } from "@/lib/format/format-count";
import { formatMoney } from "@/lib/format/format-money";

/** What can still be had, and what is lost unless the payer grants it: the two are never one sum. */
export function unclaimedFinding(totals: readonly LeakTotal[]): string {
  const open = totals.filter(({ leak }) => leak !== "late");
  const late = totals.filter(({ leak }) => leak === "late");
  if (totals.length === 0) return "No covered work is without its claim or its pay";
  const also = late.length === 0 ? "" : `; ${sums(late)} more in ${jobs(late)} is past its filing day`;
  if (open.length === 0) return `Nothing can still be claimed in time${also}`;
  return `${sums(open)} of covered work in ${jobs(open)} can still be asked for${also}`;
}

function jobs(totals: readonly LeakTotal[]): string {
  return formatCounted(
    totals.reduce((sum, { rows }) => sum + rows, 0),
    "case",
  );
}

/** One sum for each currency; they are never added. */
export function sums(totals: readonly Pick<LeakTotal, "currency" | "cents">[]): string {
  const byCurrency = new Map<Currency, number>();
  for (const { currency, cents } of totals) byCurrency.set(currency, (byCurrency.get(currency) ?? 0) + cents);
  return [...byCurrency].map(([currency, cents]) => formatMoney({ cents, currency })).join(" and ");
}
