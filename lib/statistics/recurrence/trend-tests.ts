import { incompleteGamma } from "../incomplete-gamma";
import { normalCdf } from "../normal";
import { freeRepairs, type RepairRecord } from "./repair-record";

/**
 * Are repairs of the same systems getting more or less frequent with age? Two tests against a constant rate, systems pooled.
 * @param records one per system
 * @returns `laplace`: z, above 0 when repairs come late (wear), best against a rate that changes evenly; `powerLaw`: chi-square,
 *          small when repairs come late, best against a power of age. Probabilities are two-sided. `too-few`: nothing free to fall anywhere
 * @throws RangeError for records that cannot be
 * Sources: Cox and Lewis (1966), The Statistical Analysis of Series of Events, section 3.3; MIL-HDBK-189, section 5.
 * Checked: tests/statistics/recurrence/power-law.test.ts, by hand.
 */
export function trendTests(records: readonly RepairRecord[]): TrendTests {
  const free = freeRepairs(records);
  let count = 0;
  let excess = 0;
  let variance = 0;
  let logs = 0;
  for (const { end, repairs } of free) {
    count += repairs.length;
    variance += (repairs.length * end * end) / 12;
    for (const age of repairs) {
      excess += age - end / 2;
      logs += Math.log(end / age);
    }
  }
  if (count === 0) return { kind: "too-few" };
  const z = excess / Math.sqrt(variance);
  const { lower, upper } = incompleteGamma(count, logs);
  return {
    kind: "tested",
    laplace: { z, probability: 2 * normalCdf(-Math.abs(z)) },
    powerLaw: {
      chiSquare: 2 * logs,
      degreesOfFreedom: 2 * count,
      probability: Math.min(1, 2 * Math.min(lower, upper)),
    },
  };
}

export type TrendTests =
  | {
      readonly kind: "tested";
      readonly laplace: { readonly z: number; readonly probability: number };
      readonly powerLaw: {
        readonly chiSquare: number;
        readonly degreesOfFreedom: number;
        readonly probability: number;
      };
    }
  | { readonly kind: "too-few" };
