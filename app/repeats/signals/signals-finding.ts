import { formatCounted } from "@/lib/format/format-count";
import { formatDay } from "@/lib/format/format-day";
import { weeksNeeded } from "@/lib/signals/signal-run";
import type { CurrentRun } from "./current-run";
import { asksForALook, stateOfSignal } from "./state-of-signal";

/** What the list says, or why there can be none. */
export function signalsFinding(current: CurrentRun): string {
  switch (current.kind) {
    case "no-data":
      return "No jobs are on file yet, so nothing can stand out.";
    case "before-first-job":
      return current.firstOn === undefined
        ? `No failure is on file up to ${formatDay(current.asked)}. Choose a later day.`
        : `The first failure on file is of ${formatDay(current.firstOn)}; ${formatDay(current.asked)} is before it or in its first week. Choose a later day.`;
    case "run":
      return runFinding(current);
  }
}

function runFinding({ run, signals }: Extract<CurrentRun, { kind: "run" }>): string {
  if (run.outcome === "no-units")
    return "Nothing can be expected without units in service: no unit has a day of installation, delivery or sale. Load a register, or give the units their days.";
  if (run.outcome === "too-short")
    return `Records run over ${formatCounted(run.weeks ?? 0, "week")}; ${weeksNeeded} weeks are needed before it can be told what is more than usual.`;
  const open = signals.filter((signal) => asksForALook(stateOfSignal(signal))).length;
  if (open === 0) return "Nothing fails more often than its ages predict, as far as chance can be told from it.";
  return open === 1
    ? "One thing fails more often than its ages predict"
    : `${open} things fail more often than their ages predict`;
}
