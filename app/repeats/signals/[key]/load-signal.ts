import { readOnly } from "@/db/client";
import type { StoredRun, StoredSignal } from "@/db/queries/signal-list";
import { loadNotesOfSignal, type TechnicianNote } from "@/db/queries/technician-notes";
import type { Day } from "@/lib/calendar/day";
import { currentRun } from "../current-run";
import { type RowsOfSignal, whatRowsSay } from "./what-rows-say";

export interface SignalView extends RowsOfSignal {
  readonly run: StoredRun;
  readonly signal: StoredSignal;
  readonly past: boolean;
  readonly notes: readonly TechnicianNote[];
}

/** Everything that the page of a signal shows. @returns undefined where no list has it as of that day */
export async function loadSignal(key: string, asked: Day | undefined): Promise<SignalView | undefined> {
  const current = await currentRun(asked, key);
  const signal = current.kind === "run" ? current.signals.find((one) => one.key === key) : undefined;
  if (current.kind !== "run" || signal === undefined) return undefined;
  const rows = await whatRowsSay({ lead: signal.lead, onsetOn: signal.onsetOn, asOf: current.run.asOf });
  const notes = await readOnly((db) => loadNotesOfSignal(db, key));
  return { run: current.run, signal, past: current.past, notes, ...rows };
}
