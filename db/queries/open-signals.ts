import { dayNumber } from "@/lib/calendar/day-number";
import { type SignalState, signalState } from "@/lib/signals/signal-marks";
import { countsBetween } from "@/lib/signals/weekly-ratios";
import { weekOf } from "@/lib/signals/weeks";
import type { Reader } from "../database-types";
import { loadRun, loadSignals, type StoredSignal } from "./signal-list";

/** A component that fails more than it should in some machines, of which nobody said that it is explained or nothing. */
export interface OpenSignal extends StoredSignal {
  readonly state: SignalState["kind"];
}

/** Long after every week that is followed: the last run there is. */
const farDay = "9999-12-31" as Parameters<typeof loadRun>[1]; // a real day, far beyond any record

/**
 * Signals of the last run about failing components, as they stand by what was said of them.
 * @param component of this one; of all where absent
 */
export async function loadOpenSignals(db: Reader, component?: string): Promise<readonly OpenSignal[]> {
  const run = await loadRun(db, farDay);
  if (run === undefined) return [];
  return (await loadSignals(db, run.asOf, undefined))
    .filter(({ wordKind, word }) => wordKind === "component" && word === (component ?? word))
    .map((signal) => ({ ...signal, state: stateOf(signal) }))
    .filter(({ state }) => state !== "explained" && state !== "dismissed");
}

function stateOf({ marks, lead }: StoredSignal): SignalState["kind"] {
  const end = lead.firstWeek + lead.weeklyExpected.length;
  return signalState(
    marks.map((mark) => ({ ...mark, asOfWeek: weekOf(dayNumber(mark.asOf)) })),
    { week: end - 1, since: (week) => countsBetween(lead, week + 1, end) },
  ).kind;
}
