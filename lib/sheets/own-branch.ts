import { checkOf } from "@/lib/evidence/checks";
import type { Condition } from "@/lib/evidence/condition";
import type { Branch } from "./branches";
import { checkOfStep, type SheetStep, type StepBranch } from "./sheet";

/** What a company made a step wait for, as the walk asks it. */
export function ownBranch({ check, came }: StepBranch, steps: readonly SheetStep[]): Branch {
  const step = steps.find((each) => each.check === check);
  const name = ((step === undefined ? checkOf(check) : checkOfStep(step))?.name ?? check).toLowerCase();
  return { when: conditionOf(check, came), words: `${name}: ${wordsOf(came)}` };
}

/** Both must hold. */
export function bothBranches(one: Branch | undefined, other: Branch | undefined): Branch | undefined {
  if (one === undefined || other === undefined) return one ?? other;
  return { when: { is: "all", of: [one.when, other.when] }, words: `${one.words}, and ${other.words}` };
}

function conditionOf(check: string, came: StepBranch["came"]): Condition {
  return typeof came === "string" ? { is: came, check } : { is: "word", check, words: [came.word] };
}

function wordsOf(came: StepBranch["came"]): string {
  if (typeof came !== "string") return came.word;
  return came === "good" ? "as it should be" : "not as it should be";
}
