import { rollToBusinessDay } from "@/lib/calendar/business-day";
import { type Day, daysBetween } from "@/lib/calendar/day";
import { lastCoveredDay } from "@/lib/calendar/term";
import type { FilingClock } from "@/lib/domain/policy-clocks";

export interface FilingQuestion {
  readonly clock: FilingClock;
  readonly completedOn: Day;
  /** Day of the act that the clock counts (sending or receipt); today while it has not happened. */
  readonly actOn: Day;
  /** Only used where the policy rolls. */
  readonly holidays: ReadonlySet<Day>;
}

export type FilingDecision =
  | { readonly kind: "in_window"; readonly lastDay: Day; readonly decisiveOn: Day; readonly daysLeft: number }
  | { readonly kind: "late"; readonly lastDay: Day; readonly decisiveOn: Day; readonly daysLate: number };

/** Whether a claim is filed in time; the completion day is not counted unless the policy counts it. */
export function decideFiling({ clock, completedOn, actOn, holidays }: FilingQuestion): FilingDecision {
  const lastDay = filingDeadline(clock, completedOn, holidays);
  const left = daysBetween(actOn, lastDay);
  if (left >= 0) return { kind: "in_window", lastDay, decisiveOn: actOn, daysLeft: left };
  return { kind: "late", lastDay, decisiveOn: actOn, daysLate: -left };
}

/** Last day on which the act still counts. */
export function filingDeadline(clock: FilingClock, completedOn: Day, holidays: ReadonlySet<Day>): Day {
  const plain = lastCoveredDay(completedOn, clock.within, clock.anchorDay);
  if (plain === "lifetime") throw new RangeError("clock.within: a filing window has an end");
  if (clock.roll !== "next_business_day") return plain;
  const own = clock.holidays ?? [];
  return rollToBusinessDay(plain, own.length === 0 ? holidays : new Set([...holidays, ...own]));
}
