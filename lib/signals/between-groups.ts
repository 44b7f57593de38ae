import { overDispersion } from "@/lib/statistics/multiplicity/over-dispersion";

/** Under this many expected failures a group says little about how much groups differ. Own choice, no source. */
export const fewestExpected = 4;
/** Fewer groups do not tell how much groups differ. Own choice, no source. */
const fewestGroups = 10;

/**
 * How much the true rates of groups differ from what their ages predict although nothing is wrong with any of them, as
 * the standard deviation of observed over expected beyond chance. The most extreme tenth at each end is pulled in, so
 * that the defects one is looking for do not excuse each other.
 * Source: Spiegelhalter (2005), Quality and Safety in Health Care 14, 347-351.
 * Checked: tests/signals/between-groups.test.ts, by recovery of a known spread.
 */
export function spreadBetweenGroups(groups: readonly GroupCount[]): number {
  const used = groups.filter(({ expected }) => expected >= fewestExpected);
  if (used.length < fewestGroups) return 0;
  const { betweenVariance } = overDispersion({
    groups: used.map(({ observed, expected, relativeVariance }) => {
      const standardError = Math.sqrt(1 / expected + relativeVariance);
      return { z: (observed / expected - 1) / standardError, standardError };
    }),
    winsorShare: 0.1,
  });
  return Math.sqrt(betweenVariance);
}

export interface GroupCount {
  readonly observed: number;
  readonly expected: number;
  readonly relativeVariance: number;
}
