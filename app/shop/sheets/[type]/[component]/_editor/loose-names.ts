import { checkOf } from "@/lib/evidence/checks";
import type { LooseStep } from "@/lib/sheets/loose-sheet";

export function nameOfStep({ check, own }: LooseStep): string {
  return own === undefined ? (checkOf(check)?.name ?? check) : own.name || "New check";
}

/** Words that may be found at a step, such as a branch waits for. */
export function wordsOfStep({ check, own }: LooseStep): readonly string[] {
  return own === undefined ? Object.keys(checkOf(check)?.findings ?? {}) : own.words.map(({ word }) => word);
}
