// Whether a sheet still comes to an end for everything that it was made to find: each failure is told to it as it would
// read, and the walk must name the component.

import type { Reading } from "@/lib/domain/reading";
import { entriesFor } from "@/lib/evidence/entries";
import type { EvidenceEntry } from "@/lib/evidence/entry";
import { provingReadings } from "@/lib/evidence/proving-readings";
import type { Sheet } from "./sheet";
import type { SheetAnswer } from "./sheet-answer";
import { type PlanStep, type VisitPlan, visitPlan } from "./visit-plan";
import { walk } from "./walk";

/** Failures that the shipped sheet finds and the edited one does not, each as a sentence. */
export function lostEnds(sheet: Sheet, shipped: Sheet): readonly string[] {
  const before = planOf(shipped);
  const after = planOf(sheet);
  const added = new Set(after.steps.map(({ check }) => check.key).filter((key) => !stepOf(before, key)));
  return entriesFor(sheet.productType, sheet.component)
    .filter((entry) => isFound(before, entry, "good", new Set()))
    .filter((entry) => !addedWays.every((way) => isFound(after, entry, way, added)))
    .map(
      ({ failure }) =>
        `The sheet has no end for “${failure}”: a machine that failed so is asked all of it without being named. Look at what its checks wait for.`,
    );
}

/** However the checks that the company added come out, what the rules of evidence ask for must still be reached. */
const addedWays = ["good", "passed over"] as const;

function planOf(sheet: Sheet): VisitPlan {
  return visitPlan({ productType: sheet.productType, symptom: undefined, sheets: [sheet] });
}

function stepOf({ steps }: VisitPlan, key: string): PlanStep | undefined {
  return steps.find(({ check }) => check.key === key);
}

function isFound(plan: VisitPlan, entry: EvidenceEntry, way: (typeof addedWays)[number], added: ReadonlySet<string>) {
  const proving = provingReadings(entry);
  const answers: SheetAnswer[] = [];
  for (let round = 0; round < 100; round++) {
    const { open, verdict } = walk(plan, answers, []);
    if (verdict.kind === "part" && verdict.entries.some(({ id }) => id === entry.id)) return true;
    const [next] = open;
    if (next === undefined) return false;
    const told = proving.filter(({ check }) => check === next.check.key);
    const good = goodReading(next, proving[0]);
    const skips = (added.has(next.check.key) && way === "passed over") || good === undefined;
    const one = told.at(-1) ?? (skips ? undefined : good);
    // A step that is read several times stays open until it has all of them.
    const own = one === undefined ? [] : Array.from({ length: next.times }, (_, index) => told[index] ?? one);
    answers.push(...answersOf(next, own, answers.length));
  }
  return false;
}

/** A word that says all is well; a measurement that nothing is told of is passed over. */
function goodReading({ check }: PlanStep, like: Reading | undefined): Reading | undefined {
  const word = Object.entries(check.findings).find(([, { state }]) => state === "good")?.[0];
  if (word === undefined || like === undefined) return undefined;
  return {
    ...like,
    check: check.key,
    mode: "observation",
    outcome: { kind: "finding", word },
    power: check.energy,
    pointA: undefined,
    pointB: undefined,
    sheetLow: undefined,
    sheetHigh: undefined,
  };
}

function answersOf({ check }: PlanStep, readings: readonly Reading[], before: number): readonly SheetAnswer[] {
  const answer = (given: SheetAnswer["given"], index: number): SheetAnswer => ({
    id: String(before + index),
    sequence: before + index + 1,
    check: check.key,
    time: index + 1,
    given,
    note: "",
    at: "",
  });
  if (readings.length === 0) return [answer({ kind: "skip", reason: "other" }, 0)];
  return readings.map(
    ({ number: _, check: __, note: ___, technician: ____, takenAt: _____, own: ______, ...reading }, index) =>
      answer({ kind: "reading", ...reading, cautionsRead: true }, index),
  );
}
