import { instantOnClock } from "@/lib/calendar/instant";

interface Now {
  readonly now: Date;
  /** The company's, an IANA name. */
  readonly timeZone: string;
  /** When the oldest of the nightly checks last came to an end, ISO text; undefined where one never did. */
  readonly lastAt: string | undefined;
}

const hourMs = 3_600_000;

/**
 * Whether the nightly checks should run: by night once a day, by day where the site was off for the night, at once where
 * they never ran. Hours of the night are one to five on the company's clocks; our own choice.
 */
export function nightlyDue({ now, timeZone, lastAt }: Now): boolean {
  if (lastAt === undefined) return true;
  const hours = (now.getTime() - Date.parse(lastAt)) / hourMs;
  if (hours < 0) return hours < -24; // a clock was put back; where by more than a day, the date of the last run says nothing
  const hour = Number(instantOnClock(now.toISOString(), timeZone).slice(11, 13));
  return hours >= (hour >= 1 && hour < 5 ? 20 : 30);
}
