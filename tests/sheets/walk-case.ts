import type { ExpectedRange, Reading } from "@/lib/domain/reading";
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";
import type { PlanStep, VisitPlan } from "@/lib/sheets/visit-plan";
import { type Walk, walk } from "@/lib/sheets/walk";

/** Answers step after step with what `found` says of it, until nothing is worth asking; `choose` picks the next of the open steps. */
export function walkCase(
  plan: VisitPlan,
  found: (step: PlanStep) => readonly Reading[],
  {
    ranges = [],
    choose = (open) => open[0],
    until = () => false,
  }: {
    readonly ranges?: readonly ExpectedRange[];
    readonly choose?: (open: readonly PlanStep[], walked: Walk) => PlanStep | undefined;
    readonly until?: (walked: Walk) => boolean;
  } = {},
): { readonly answers: readonly SheetAnswer[]; readonly walked: Walk; readonly minutes: number } {
  const answers: SheetAnswer[] = [];
  let minutes = 0;
  for (let round = 0; round < 80; round++) {
    const walked = walk(plan, answers, ranges);
    const next = until(walked) ? undefined : choose(walked.open, walked);
    if (next === undefined) return { answers, walked, minutes };
    minutes += next.minutes;
    answers.push(...answersOf(next, found(next), answers.length));
  }
  throw new Error("the walk does not end");
}

function answersOf(step: PlanStep, readings: readonly Reading[], before: number): readonly SheetAnswer[] {
  const answer = (given: SheetAnswer["given"], index: number): SheetAnswer => ({
    id: `00000000-0000-4000-8000-${String(before + index).padStart(12, "0")}`,
    sequence: before + index + 1,
    check: step.check.key,
    time: index + 1,
    given,
    note: "",
    at: "2026-10-31T09:00:00-05:00",
  });
  if (readings.length === 0) return [answer({ kind: "skip", reason: "no_access" }, 0)];
  return readings.map(({ number: _, check: __, note: ___, technician: ____, takenAt: _____, ...reading }, index) =>
    answer({ kind: "reading", ...reading, cautionsRead: true }, index),
  );
}
