import type { Currency } from "@/lib/domain/money";
import { type AnsweredWeek, paidBack } from "@/lib/forecast/paid-back";
import type { StoredTotal, TotalRange } from "@/lib/forecast/stored-total";
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
export function paidBackWords(
  weeks: readonly AnsweredWeek[],
  year: StoredTotal,
  currency: Currency,
): readonly string[] {
  const sum = (of: keyof AnsweredWeek) => weeks.reduce((total, week) => total + week[of], 0);
  const [parts, paid, unclaimed] = [sum("partsCents"), sum("paidCents"), sum("unclaimedCents")];
  if (parts === 0) return ["No parts were fitted in the year before the last 90 days, so no share can be told."];
  const back = paidBack(weeks, year.yearCents ?? []);
  return [
    `Payers paid ${wholeMoney(paid, currency)} for parts on those jobs: ${inHundred(paid / parts)} of what the parts cost.`,
    ...(back === undefined
      ? []
      : [
          `At that pace they pay back ${likely(back.asNow, currency)} of the next twelve months’ parts; 9 times in 10 between ${wide(back.asNow, currency).replace(" to ", " and ")}.`,
        ]),
    `Covered parts for ${wholeMoney(unclaimed, currency)} more were never claimed on them: ${inHundred(unclaimed / parts)}.`,
    ...(back === undefined
      ? []
      : [
          `Claimed and paid too, warranty would pay back ${likely(back.withUnclaimed, currency)}; 9 times in 10 between ${wide(back.withUnclaimed, currency).replace(" to ", " and ")}.`,
        ]),
  ];
}

function inHundred(share: number): string {
  const hundredths = 100 * share;
  return hundredths > 0 && hundredths < 1 ? "under 1 in 100" : `${formatCount(Math.round(hundredths))} in 100`;
}
