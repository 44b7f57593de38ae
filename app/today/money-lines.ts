import type { KeptMoney, MoneyDue } from "@/db/queries/money-today";
import { type Day, daysBetween } from "@/lib/calendar/day";
import { formatCounted } from "@/lib/format/format-count";
import { formatDay, formatDaysLeft } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";
import { type DueLine, urgentDays } from "./due-lines";

/** Money at payers: what they kept and can still be disputed, lists of theirs that wait, and parts they need no more. */
export function moneyLines({ kept, waitingLines, partsToGo }: MoneyDue, today: Day): readonly DueLine[] {
  return [
    ...kept.map((money) => keptLine(money, today)),
    ...(waitingLines === 0
      ? []
      : [
          plainLine("lines of lists", `See to ${formatCounted(waitingLines, "line")} of payers’ lists`, {
            status: "watch",
            href: "/claims/answers",
            reason: "money that came in and stands on no claim yet",
          }),
        ]),
    ...(partsToGo === 0
      ? []
      : [
          plainLine("parts to go", `Let the failed parts of ${formatCounted(partsToGo, "claim")} go`, {
            status: "note",
            href: "/claims/failed-parts",
            reason: "payers can no longer ask for them",
          }),
        ]),
  ];
}

function keptLine({ leak, claims, sums, firstDay }: KeptMoney, today: Day): DueLine {
  const left = firstDay === undefined ? undefined : daysBetween(today, firstDay);
  const money = sums.map(formatMoney).join(" and ");
  const act =
    leak === "short-paid" ? `Dispute ${money} that payers cut` : `Ask for ${money} of credits for parts never posted`;
  const clock =
    firstDay === undefined || left === undefined
      ? "the usual time to dispute has passed for all of it"
      : `the first by ${formatDay(firstDay)}, ${formatDaysLeft(left)}`;
  return plainLine(`kept ${leak}`, act, {
    status: left !== undefined && left <= urgentDays ? "act-now" : "watch",
    href: "/claims/disputes",
    reason: `${formatCounted(claims, "claim")} — ${clock}`,
  });
}

function plainLine(key: string, act: string, rest: Pick<DueLine, "status" | "href" | "reason">): DueLine {
  return { key, act, urgentClaims: 0, ...rest };
}
