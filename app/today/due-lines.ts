import type { Status } from "@/app/_ui/status-word";
import type { DraftClaim, HeldLoad } from "@/db/queries/today";
import { type Day, daysBetween } from "@/lib/calendar/day";
import { formatCounted } from "@/lib/format/format-count";
import { formatDay, formatDaysLeft } from "@/lib/format/format-day";

/** One thing that waits: shape, verb and object, reason and time. */
export interface DueLine {
  readonly key: string;
  readonly status: Status;
  readonly act: string;
  readonly href: string;
  readonly reason: string;
}

/** From this many days before its filing day a draft is urgent. */
export const urgentDays = 7;

/** The sentence that opens the page: what is most urgent, or that nothing is. */
export function todayFinding(lines: readonly DueLine[]): string {
  const urgent = lines.filter(({ status }) => status === "act-now").length;
  const claims = formatCounted(urgent, "claim");
  if (urgent > 0) return `${claims} ${urgent === 1 ? "has" : "have"} ${urgentDays} days or less to be filed`;
  return lines.length === 0
    ? "Nothing is waiting"
    : `${formatCounted(lines.length, "thing")} to see to, none of them urgent`;
}

/** What needs somebody now: drafts by filing day, overdue first, then rows that wait to be corrected. */
export function dueLines(
  { drafts, held }: { readonly drafts: readonly DraftClaim[]; readonly held: readonly HeldLoad[] },
  today: Day,
): readonly DueLine[] {
  const claims = drafts.map(({ claimNumber, payer, fileBy }): DueLine => {
    const left = daysBetween(today, fileBy);
    return {
      key: `claim ${claimNumber}`,
      status: left <= urgentDays ? "act-now" : "watch",
      act: left < 0 ? `Decide about claim ${claimNumber}` : `File claim ${claimNumber}`,
      href: `/claims/${encodeURIComponent(claimNumber)}`,
      reason: `${payer} — by ${formatDay(fileBy)}, ${formatDaysLeft(left)}`,
    };
  });
  const rows = held.map(
    ({ batchId, fileName, rows: count }): DueLine => ({
      key: `batch ${batchId}`,
      status: "watch",
      act: `Correct ${formatCounted(count, "held row")}`,
      href: `/files/${batchId}`,
      reason: `${fileName} — not in any number until corrected`,
    }),
  );
  return [...claims, ...rows];
}
