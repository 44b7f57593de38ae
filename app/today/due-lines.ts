import type { Status } from "@/app/_ui/status-word";
import type { ClaimableTotals } from "@/db/queries/claimable";
import type { DraftClaim, HeldLoad } from "@/db/queries/today";
import { type Day, daysBetween } from "@/lib/calendar/day";
import { formatCounted } from "@/lib/format/format-count";
import { formatDay, formatDaysLeft } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";

/** One thing that waits: shape, verb and object, reason and time. */
export interface DueLine {
  readonly key: string;
  readonly status: Status;
  readonly act: string;
  readonly href: string;
  readonly reason: string;
  /** Claims in it that must be filed within `urgentDays`. */
  readonly urgentClaims: number;
}

/** From this many days before its filing day a draft is urgent. */
export const urgentDays = 7;

/** The sentence that opens the page: what is most urgent, or that nothing is. */
export function todayFinding(lines: readonly DueLine[]): string {
  const urgent = lines.reduce((sum, line) => sum + line.urgentClaims, 0);
  const claims = formatCounted(urgent, "claim");
  if (urgent > 0) return `${claims} ${urgent === 1 ? "has" : "have"} ${urgentDays} days or less to be filed`;
  return lines.length === 0
    ? "Nothing is waiting"
    : `${formatCounted(lines.length, "thing")} to see to, none of them urgent`;
}

export interface Waiting {
  readonly drafts: readonly DraftClaim[];
  readonly held: readonly HeldLoad[];
  /** Covered work that nobody has claimed, `soon` of it with `urgentDays` or less. */
  readonly claimable: ClaimableTotals;
}

/** What needs somebody now: drafts by filing day, overdue first, then covered work without a claim, then rows that were held back. */
export function dueLines({ drafts, held, claimable }: Waiting, today: Day): readonly DueLine[] {
  const claims = drafts.map(({ claimNumber, payer, fileBy }): DueLine => {
    const left = daysBetween(today, fileBy);
    return {
      key: `claim ${claimNumber}`,
      status: left <= urgentDays ? "act-now" : "watch",
      act: left < 0 ? `Decide about claim ${claimNumber}` : `File claim ${claimNumber}`,
      href: `/claims/${encodeURIComponent(claimNumber)}`,
      urgentClaims: left <= urgentDays ? 1 : 0,
      reason: `${payer} — by ${formatDay(fileBy)}, ${formatDaysLeft(left)}`,
    };
  });
  const rows = held.map(
    ({ batchId, fileName, rows: count }): DueLine => ({
      key: `batch ${batchId}`,
      status: "watch",
      act: `Correct ${formatCounted(count, "row")} held back`,
      href: `/files/${batchId}`,
      urgentClaims: 0,
      reason: `${fileName} — in no number until corrected`,
    }),
  );
  return [...claims, ...unclaimed(claimable, today), ...rows];
}

/** One line for all covered work without a claim: its sum, and how much of it runs out within a week. */
function unclaimed({ cases, soon, firstDay, sums }: ClaimableTotals, today: Day): readonly DueLine[] {
  if (firstDay === undefined) return [];
  return [
    {
      key: "unclaimed",
      status: soon > 0 ? "act-now" : "watch",
      act: `Claim ${sums.map(formatMoney).join(" and ")} of covered work`,
      href: "/claims",
      urgentClaims: soon,
      reason: `${formatCounted(cases, "case")}, ${soon} with ${urgentDays} days or less — the first by ${formatDay(firstDay)}, ${formatDaysLeft(daysBetween(today, firstDay))}`,
    },
  ];
}
