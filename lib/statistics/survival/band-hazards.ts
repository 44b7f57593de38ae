import { poissonRate } from "../intervals/poisson-rate";
import { requireProbability } from "../require";
import type { AgeBand } from "./age-bands";

/**
 * Failures per unit of time lived, age band by age band, with exact Poisson limits: the hazard taken as constant
 * within each band.
 * @param bands       from `ageBands`
 * @param confidence  two-sided level in (0, 1); no default
 * @returns one entry per band; `no-exposure` where nobody was watched for any time
 * Source: Garwood (1936), through `poissonRate`.
 * Checked: tests/statistics/survival/age-bands.test.ts.
 */
export function bandHazards(bands: readonly AgeBand[], { confidence }: { readonly confidence: number }): BandHazard[] {
  requireProbability("confidence", confidence);
  return bands.map((band) => {
    const { start, end, failed, exposure } = band;
    if (!(exposure > 0)) return { kind: "no-exposure", start, end };
    const { point, low, high } = poissonRate({ events: failed, exposure, confidence });
    return { kind: "hazard", start, end, failed, exposure, rate: point, low, high };
  });
}

export type BandHazard =
  | {
      readonly kind: "hazard";
      readonly start: number;
      readonly end: number;
      readonly failed: number;
      readonly exposure: number;
      /** Failures per unit of age. */
      readonly rate: number;
      readonly low: number;
      readonly high: number;
    }
  | { readonly kind: "no-exposure"; readonly start: number; readonly end: number };
