import type { CountInGroup } from "@/lib/statistics/intervals/rate-ratio";
import type { FailureRates } from "./failure-rates";
import { type AgeBand, ageBands } from "./rate-question";

/** Failures and unit-years of two groups at one age, and what the second's rate predicts for the first. */
export interface AgeStratum {
  readonly band: AgeBand;
  readonly first: CountInGroup;
  readonly second: CountInGroup;
  /** Failures that the first would have had at the second's rate; undefined where the second was never watched at that age. */
  readonly expected: number | undefined;
}

export interface SharedStratum extends AgeStratum {
  readonly expected: number;
}

/** @param first, second  rates by age alone; bands in which neither was watched are left out */
export function ageStrata(first: FailureRates, second: FailureRates): AgeStratum[] {
  return ageBands
    .map((band) => {
      const [one, other] = [countIn(first, band), countIn(second, band)];
      const expected = other.exposure > 0 ? (other.events / other.exposure) * one.exposure : undefined;
      return { band, first: one, second: other, expected };
    })
    .filter(({ first: one, second: other }) => one.exposure + other.exposure > 0);
}

/** Ages at which both were watched: no other can be compared. */
export function sharedByBoth(strata: readonly AgeStratum[]): SharedStratum[] {
  return strata.flatMap((stratum) =>
    stratum.expected !== undefined && stratum.first.exposure > 0 ? [{ ...stratum, expected: stratum.expected }] : [],
  );
}

function countIn(rates: FailureRates, band: AgeBand): CountInGroup {
  const group = rates.groups.find(({ key }) => key[0]?.value === band.key);
  if (group === undefined) return { events: 0, exposure: 0 };
  if (group.kind === "no-exposure") return { events: group.events, exposure: 0 };
  return { events: group.estimate.events, exposure: group.estimate.n };
}
