import { poissonAtLeast } from "@/lib/statistics/discrete/poisson";
import type { WeekNumber } from "./weeks";

/** What a person said of a signal. Marks are only added; taking one back is a mark of its own. */
export interface SignalMark {
  readonly markId: number;
  readonly kind: MarkKind;
  /** Mark that this one takes back; given for `undo` only. */
  readonly undoes: number | undefined;
  /** Week as of which the signal stood, and what it counted then since its onset. */
  readonly asOfWeek: WeekNumber;
  readonly observed: number;
  readonly expected: number;
}

export type MarkKind = "watch" | "not_now" | "explain" | "dismiss" | "undo";

export type SignalState =
  | { readonly kind: "new" }
  | { readonly kind: "watched"; readonly mark: number }
  | { readonly kind: "put-off"; readonly mark: number; readonly untilWeek: WeekNumber }
  | { readonly kind: "explained" | "dismissed"; readonly mark: number }
  /** Was explained or dismissed, and has become worse than it was then. */
  | { readonly kind: "returned"; readonly mark: number; readonly observed: number; readonly expected: number };

/** What is not now is asked again after four weeks. Own choice, no source. */
const weeksPutOff = 4;
/** Chance under which failures since the mark are more than the ratio that was accepted with it. Own choice, no source. */
export const newEvidence = 0.01;

/**
 * Where a signal stands: by the last mark that was not taken back. What was explained or dismissed comes back only when the
 * weeks since then are worse than what was accepted: exact Poisson chance of so many failures at the accepted ratio.
 * @param since  failures and expectation after a week, of the cell that leads the signal
 * Checked: tests/signals/signal-marks.test.ts, by hand.
 */
export function signalState(
  marks: readonly SignalMark[],
  now: { readonly week: WeekNumber; readonly since: (week: WeekNumber) => Counts },
): SignalState {
  const mark = standing(marks);
  if (mark === undefined) return { kind: "new" };
  switch (mark.kind) {
    case "watch":
      return { kind: "watched", mark: mark.markId };
    case "not_now": {
      const untilWeek = mark.asOfWeek + weeksPutOff;
      return now.week < untilWeek ? { kind: "put-off", mark: mark.markId, untilWeek } : { kind: "new" };
    }
    case "explain":
    case "dismiss": {
      const later = now.since(mark.asOfWeek);
      const accepted = mark.expected > 0 ? Math.max(1, mark.observed / mark.expected) : 1;
      const mean = accepted * later.expected;
      if (later.observed > 0 && (mean === 0 || poissonAtLeast(later.observed, mean) <= newEvidence))
        return { kind: "returned", mark: mark.markId, ...later };
      return { kind: mark.kind === "explain" ? "explained" : "dismissed", mark: mark.markId };
    }
  }
}

interface Counts {
  readonly observed: number;
  readonly expected: number;
}

type StandingMark = SignalMark & { readonly kind: Exclude<MarkKind, "undo"> };

function standing(marks: readonly SignalMark[]): StandingMark | undefined {
  const undone = new Set(marks.flatMap(({ undoes }) => undoes ?? []));
  return marks
    .filter((mark): mark is StandingMark => mark.kind !== "undo" && !undone.has(mark.markId))
    .toSorted((a, b) => b.markId - a.markId)[0];
}
