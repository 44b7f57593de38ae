// Days from the customer's call to the closed job: a wait for the first visit and, where that does not finish the job,
// a wait for parts. Shares are invented around public figures (most owners wait over 3 days; 53 to 72 % finished at the
// first visit; about 11 days without the appliance).
import { happens, pickWeighted } from "./draws";
import type { Random } from "./random";

/** Weight of 0, 1, 2 … days until the first visit. */
const visitWait = [2, 6, 9, 13, 15, 14, 11, 9, 7, 5, 4, 3, 2];

/** Weight of 0, 1, 2 … days from the first visit to the last, where parts had to be ordered. */
const partsWait = [0, 0, 2, 4, 6, 8, 10, 11, 10, 9, 8, 7, 6, 5, 4, 3, 3, 2, 2, 1, 1, 1, 1, 0, 0, 0, 0, 0, 1];

const firstVisitCompletion = 0.64;

export interface Delay {
  readonly untilVisit: number;
  readonly forParts: number;
}

export function drawDelay(random: Random): Delay {
  const untilVisit = pickWeighted(random, visitWait);
  return { untilVisit, forParts: happens(random, firstVisitCompletion) ? 0 : pickWeighted(random, partsWait) };
}

/** Chance that a job reported `days` ago is closed by now; index is days. The last entry is 1. */
export function closedWithin(): readonly number[] {
  const visit = shares(visitWait);
  const parts = shares(partsWait).map(
    (share, days) => (1 - firstVisitCompletion) * share + (days === 0 ? firstVisitCompletion : 0),
  );
  const chances = new Array<number>(visit.length + parts.length - 1).fill(0);
  for (const [first, a] of visit.entries()) {
    for (const [second, b] of parts.entries()) chances[first + second] = (chances[first + second] ?? 0) + a * b;
  }
  let sum = 0;
  return chances.map((chance) => {
    sum += chance;
    return Math.min(1, sum);
  });
}

function shares(weights: readonly number[]): readonly number[] {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight) => weight / sum);
}
