import type { StoredSignal } from "@/db/queries/signal-list";
import { dayNumber } from "@/lib/calendar/day-number";
import { type SignalState, signalState } from "@/lib/signals/signal-marks";
import { countsBetween } from "@/lib/signals/weekly-ratios";
import { weekOf } from "@/lib/signals/weeks";

/** Where a signal stands by what was said of it and by what came since. */
export function stateOfSignal({ marks, lead }: StoredSignal): SignalState {
  const end = lead.firstWeek + lead.weeklyExpected.length;
  return signalState(
    marks.map((mark) => ({ ...mark, asOfWeek: weekOf(dayNumber(mark.asOf)) })),
    { week: end - 1, since: (week) => countsBetween(lead, week + 1, end) },
  );
}

export const stateWords: Readonly<Record<SignalState["kind"], string>> = {
  new: "To look at",
  watched: "Watched",
  "put-off": "Not now",
  explained: "Explained",
  dismissed: "Dismissed",
  returned: "Came back",
};

/** What is still asked of somebody: the rest waits in a closed list. */
export function asksForALook({ kind }: SignalState): boolean {
  return kind === "new" || kind === "watched" || kind === "returned";
}
