import { instantInUtc, instantOfClock } from "@/lib/calendar/instant";
import type { ClockTime } from "./photo-reading";

/** A camera without an offset is taken to be set to the shop's zone. */
export function instantTaken(taken: ClockTime | undefined, timeZone: string): string | null {
  if (taken === undefined) return null;
  return taken.offset === undefined
    ? instantOfClock(taken.clock, timeZone)
    : instantInUtc(`${taken.clock}${taken.offset}`);
}
