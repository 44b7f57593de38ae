import { requireProbability, requireWholeNumber } from "../require";

/** Events among trials: the input of every interval for a share. */
export interface BinomialTrials {
  /** Whole number, 0..trials. */
  readonly events: number;
  /** Whole number, 1 or more. */
  readonly trials: number;
  /** Two-sided level in (0, 1). */
  readonly confidence: number;
}

export function requireTrials({ events, trials, confidence }: BinomialTrials): void {
  requireWholeNumber("events", events);
  requireWholeNumber("trials", trials);
  requireProbability("confidence", confidence);
  if (trials === 0) throw new RangeError(`trials must be 1 or more; it is ${trials}`);
  if (events > trials) throw new RangeError(`events must not exceed trials (${trials}); it is ${events}`);
}

/** The two-sided normal multiplier is worked from the small tail, so that it keeps its digits near confidence 1. */
export function tailOf(confidence: number): number {
  return (1 - confidence) / 2;
}
