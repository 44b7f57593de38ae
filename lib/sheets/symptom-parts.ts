import type { Estimate } from "@/lib/statistics/estimate";
import { shareEstimate } from "@/lib/statistics/share-estimate";
import { type SymptomGroup, symptomLevel } from "./symptom-shares";

/** A part on closed jobs of one symptom that are alike in everything that is asked. */
export interface SymptomPart extends Pick<SymptomGroup, "modelId" | "model" | "ageBand" | "season"> {
  readonly partNumber: string;
  readonly description: string;
  /** Jobs on which it was fitted, each once. */
  readonly jobs: number;
  readonly pieces: number;
}

export interface NeededPart {
  readonly partNumber: string;
  readonly description: string;
  readonly pieces: number;
  /** Of the closed jobs in view, those that needed it. A range for each by itself: a job may need several parts. */
  readonly share: Estimate;
}

/** The parts that most jobs needed first. @param jobs  closed jobs in view, with or without a part */
export function neededParts(parts: readonly SymptomPart[], jobs: number): readonly NeededPart[] {
  const byNumber = new Map<string, { description: string; pieces: number; jobs: number }>();
  for (const { partNumber, description, pieces, jobs: own } of parts) {
    const sum = byNumber.get(partNumber) ?? { description, pieces: 0, jobs: 0 };
    byNumber.set(partNumber, {
      description: sum.description || description,
      pieces: sum.pieces + pieces,
      jobs: sum.jobs + own,
    });
  }
  return [...byNumber]
    .sort(([a, one], [b, other]) => other.jobs - one.jobs || (a < b ? -1 : 1))
    .map(([partNumber, { description, pieces, jobs: events }]) => ({
      partNumber,
      description,
      pieces,
      share: shareEstimate({ events, trials: jobs, level: symptomLevel, method: "wilson" }),
    }));
}
