import type { WarrantyShare } from "@/db/queries/part-money";
import type { Currency } from "@/lib/domain/money";
import type { StoredTotal, TotalMonth, TotalRange } from "@/lib/forecast/stored-total";
import { formatCount } from "@/lib/format/format-count";
import { formatMoney } from "@/lib/format/format-money";

/** "USD 5,100 to 7,300": whole units, since no forecast knows cents. */
export function moneyRun(low: number, high: number, currency: Currency): string {
  const first = wholeMoney(low, currency);
  return low === high ? first : `${first} to ${formatCount(Math.round(high / 100))}`;
}

export function wholeMoney(cents: number, currency: Currency): string {
  return formatMoney({ cents: 100 * Math.round(cents / 100), currency }).replace(/\.00$/, "");
}

export function likely({ low60, high60 }: TotalRange, currency: Currency): string {
  return moneyRun(low60, high60, currency);
}

export function wide({ low90, high90 }: TotalRange, currency: Currency): string {
  return moneyRun(low90, high90, currency);
}

export function moneyFinding(total: StoredTotal | undefined, currency: Currency): string {
  const first = total?.months[0];
  if (first === undefined) return "What parts will cost is not known yet";
  return `Parts: most likely ${likely(first.cents, currency)} next month; 9 times in 10 between ${wide(first.cents, currency).replace(" to ", " and ")}`;
}

/** What payers pay back of a year's spend, at the pace of the jobs that they have had time to answer. */
export function paidBackWords(share: WarrantyShare, year: TotalMonth["cents"], currency: Currency): readonly string[] {
  if (share.partsCents === 0)
    return ["No parts were fitted in the year before the last 90 days, so no share can be told."];
  const [paid, more] = [share.paidCents / share.partsCents, share.unclaimedCents / share.partsCents];
  const expected = (part: number) => moneyRun(part * year.low90, part * year.high90, currency);
  return [
    `Payers paid ${wholeMoney(share.paidCents, currency)} for parts on those jobs: ${inHundred(paid)} of what the parts cost. At that pace they pay back ${expected(paid)} of the next twelve months’ parts.`,
    `Covered parts for ${wholeMoney(share.unclaimedCents, currency)} more were never claimed on them: ${inHundred(more)}. Claimed too, warranty would pay back up to ${expected(paid + more)}.`,
  ];
}

function inHundred(share: number): string {
  const hundredths = 100 * share;
  return hundredths > 0 && hundredths < 1 ? "under 1 in 100" : `${formatCount(Math.round(hundredths))} in 100`;
}
