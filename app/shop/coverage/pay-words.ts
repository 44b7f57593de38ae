import { termInWords } from "@/lib/calendar/day-words";
import type { Policy } from "@/lib/domain/policy";
import { formatPlainDay } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";
import { componentWords, listed, type WordsOfPolicy } from "./policy-words";

/** Amounts, clocks and what must be asked beforehand. */
export function payWords(policy: Policy): readonly WordsOfPolicy[] {
  return [
    { title: "Pay", sentences: amounts(policy) },
    { title: "Clocks", sentences: clocks(policy) },
    { title: "Authorization", sentences: authorization(policy) },
  ].filter(({ sentences }) => sentences.length > 0);
}

function amounts({ pay, contract, currency }: Policy): readonly string[] {
  const money = (cents: number) => formatMoney({ cents, currency });
  const most = (cents: number | undefined, what: string) =>
    cents === undefined ? [] : [`At most ${money(cents)} ${what}.`];
  return [
    ...labour(pay.labour, money),
    tripWords(pay.trip, money),
    `Parts: invoice cost plus ${pay.parts.handlingPercent} percent handling.`,
    ...most(pay.parts.capCents, "for parts"),
    pay.diagnosis.kind === "none"
      ? "A diagnosis without repair is not paid."
      : `A diagnosis without repair: ${money(pay.diagnosis.cents)}.`,
    ...most(pay.claimCapCents, "for one claim"),
    ...(contract?.deductibleCents === undefined ? [] : [`The holder pays ${money(contract.deductibleCents)}.`]),
    ...most(contract?.perClaimLimitCents, "for one claim under the contract"),
  ];
}

type Money = (cents: number) => string;

function labour(pay: Policy["pay"]["labour"], money: Money): readonly string[] {
  switch (pay.kind) {
    case "schedule":
      return [
        ...pay.jobClasses.map(
          ({ name, cents, components }) => `${name}: ${money(cents)} (${componentWords(components)}).`,
        ),
        `Labour of any other job: ${money(pay.otherwiseCents)}.`,
      ];
    case "hours":
      return [
        `Labour: ${money(pay.centsPerHour)} an hour${pay.capHours === undefined ? "" : `, at most ${pay.capHours} hours`}.`,
        ...pay.entries.map(({ component, hours }) => `${hours} h for ${componentWords([component])}.`),
        `${pay.otherwiseHours} h for any other job.`,
      ];
    case "cost":
      return [`Labour as charged${pay.capCents === undefined ? "" : `, at most ${money(pay.capCents)}`}.`];
  }
}

function tripWords(trip: Policy["pay"]["trip"], money: Money): string {
  if (trip.kind === "included") return "The trip is included in labour.";
  if (trip.kind === "flat") return `Trip: ${money(trip.cents)}.`;
  if (trip.kind === "per_mile") {
    const included = trip.includedMiles === 0 ? "" : ` beyond the first ${trip.includedMiles}`;
    const most = trip.capCents === undefined ? "" : `, at most ${money(trip.capCents)}`;
    return `Trip: ${trip.centsPerMile} cents for each mile${included}, there and back${most}.`;
  }
  return `Trip as charged${trip.capCents === undefined ? "" : `, at most ${money(trip.capCents)}`}.`;
}

function clocks({ clocks: { filing, resubmission, partHold } }: Policy): readonly string[] {
  const act = filing.by === "sending" ? "sent" : "received by the payer";
  const day = filing.anchorDay === "include" ? ", the day of completion counted" : "";
  const roll =
    filing.roll === "none"
      ? ""
      : `; a last day on a weekend moves to the next working day${holidayWords(filing.holidays)}`;
  return [
    `A claim must be ${act} within ${termInWords(filing.within)} of completion${day}${roll}.`,
    resubmission.times === 0
      ? "A rejected claim cannot be corrected."
      : `A rejected claim can be corrected within ${termInWords(resubmission.within)}, ${resubmission.times === 1 ? "once" : `${resubmission.times} times`}.`,
    `The failed part is kept for ${termInWords(partHold.within)} after ${partHold.from === "filed" ? "filing" : "payment"}.`,
  ];
}

function holidayWords(holidays: Policy["clocks"]["filing"]["holidays"] = []): string {
  return holidays.length === 0 ? "" : `, past ${listed(holidays.map(formatPlainDay))} too`;
}

function authorization({ authorization: rule, currency }: Policy): readonly string[] {
  const money = (cents: number) => formatMoney({ cents, currency });
  return [
    ...(rule.partsOverCents === undefined ? [] : [`Needed where parts cost more than ${money(rule.partsOverCents)}.`]),
    ...(rule.claimOverCents === undefined ? [] : [`Needed where the claim is over ${money(rule.claimOverCents)}.`]),
    ...(rule.components.length === 0 ? [] : [`Needed for ${componentWords(rule.components)}.`]),
    ...(rule.secondOf === undefined || rule.secondOf.length === 0
      ? []
      : [`Needed for a second ${componentWords(rule.secondOf)} on one unit.`]),
    ...(rule.diagnosisOnly === true ? ["Needed for a diagnosis without a repair."] : []),
    ...(rule.withoutProofOfPurchase ? ["Needed without proof of purchase."] : []),
    ...(rule.validFor === undefined ? [] : [`A number holds for ${termInWords(rule.validFor)}.`]),
  ];
}
