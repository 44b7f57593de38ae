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
