import type { ClaimsDue } from "@/db/queries/claims-due";
import { type Day, daysBetween } from "@/lib/calendar/day";
import { answerDays } from "@/lib/claims/life/waiting";
import { formatCounted } from "@/lib/format/format-count";
import { formatDay, formatDaysLeft } from "@/lib/format/format-day";
import { type DueLine, urgentDays } from "./due-lines";

/** Claims that were sent and wait for us or are late at their payers: corrections by their day, then answers, then parts. */
export function claimLines({ toCorrect, unanswered, partsToKeep }: ClaimsDue, today: Day): readonly DueLine[] {
  const href = (claimNumber: string) => `/claims/${encodeURIComponent(claimNumber)}`;
  const corrections = toCorrect.map(({ claimNumber, payer, resubmitBy }): DueLine => {
    const left = daysBetween(today, resubmitBy);
    return {
      key: `correct ${claimNumber}`,
      status: left <= urgentDays ? "act-now" : "watch",
      act: left < 0 ? `Decide about claim ${claimNumber}` : `Correct claim ${claimNumber} and send it again`,
      href: href(claimNumber),
      reason: `${payer} refused it — by ${formatDay(resubmitBy)}, ${formatDaysLeft(left)}`,
      urgentClaims: left <= urgentDays ? 1 : 0,
    };
  });
  const late = unanswered.map(({ claimNumber, payer, sentOn }): DueLine => {
    const days = daysBetween(sentOn, today) - answerDays;
    return {
      key: `answer ${claimNumber}`,
      status: "watch",
      act: `Ask ${payer} about claim ${claimNumber}`,
      href: href(claimNumber),
      reason: `sent ${formatDay(sentOn)}, the answer is ${formatCounted(days, "day")} late`,
      urgentClaims: 0,
    };
  });
  return [...corrections, ...late, ...partsLine(partsToKeep)];
}

/** Lines that must be acted on now before those to watch and those to note, otherwise as they came. */
export function urgentFirst(lines: readonly DueLine[]): readonly DueLine[] {
  const rank = { "act-now": 0, watch: 1, fine: 2, note: 2 } as const;
  return [...lines].sort((a, b) => rank[a.status] - rank[b.status]);
}

function partsLine({ count, firstUntil }: ClaimsDue["partsToKeep"]): readonly DueLine[] {
  if (count === 0 || firstUntil === undefined) return [];
  return [
    {
      key: "parts to keep",
      status: "note",
      act: `Keep ${formatCounted(count, "failed part")}`,
      href: "/claims?list=settled",
      reason: `payers may still ask for them — the first may go after ${formatDay(firstUntil)}`,
      urgentClaims: 0,
    },
  ];
}
