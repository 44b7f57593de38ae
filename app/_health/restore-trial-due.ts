import type { RestoreDrills } from "@/db/queries/restore-drills";
import { instantOnClock } from "@/lib/calendar/instant";

interface Now {
  readonly now: Date;
  /** The company's, an IANA name. */
  readonly timeZone: string;
  readonly drills: RestoreDrills;
}

const hourMs = 3_600_000;

/**
 * Whether the newest backup should be restored on trial: in the first night after six days and a half without one that came
 * back, by day where the site was off for that night, so that Health need not warn after eight. What failed is tried again
 * after a day. Hours of the night are those of the nightly checks. A clock that was put back makes trials of days to come:
 * by more than a day, their dates say nothing.
 */
export function restoreTrialDue({ now, timeZone, drills: { last, lastGood } }: Now): boolean {
  const hoursSince = (at: string | undefined) => {
    const hours = at === undefined ? Number.POSITIVE_INFINITY : (now.getTime() - Date.parse(at)) / hourMs;
    return hours < -24 ? Number.POSITIVE_INFINITY : hours;
  };
  if (hoursSince(last?.finishedAt) < 20) return false;
  const sinceGood = hoursSince(lastGood?.finishedAt);
  if (sinceGood < 6.5 * 24 || sinceGood >= 7.5 * 24) return sinceGood >= 7.5 * 24;
  const hour = Number(instantOnClock(now.toISOString(), timeZone).slice(11, 13));
  return hour >= 1 && hour < 5;
}
