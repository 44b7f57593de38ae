import type { Estimate } from "@/lib/statistics/estimate";
import { rateEstimate } from "@/lib/statistics/rate-estimate";
import { ageBands as cutByAge } from "@/lib/statistics/survival/age-bands";
import type { AgeFlows } from "@/lib/statistics/survival/age-flows";
import { type LifeTableRow, lifeTable } from "@/lib/statistics/survival/life-table";
import { type AgeBand, ageBands, daysPerYear } from "./rate-question";

/** One band of age of a component: what happened in it, and how often it fails per year lived there. */
export interface AgeHazard {
  readonly band: AgeBand;
  /** Undefined where nobody was watched in the band, so that there is no table row to make. */
  readonly lives: LifeTableRow | undefined;
  /** Failures per component-year with exact limits; undefined where nobody lived in the band. */
  readonly estimate: Estimate | undefined;
  readonly failed: number;
  readonly years: number;
}

/**
 * Actuarial life table of the lives in the usual age bands, with an exact rate for each band.
 * The table ends at the oldest age watched; a band that nobody reached is left out.
 * Source: Cutler & Ederer (1958) for the table; Garwood (1936) for the limits.
 * Checked: tests/failures/age-hazards.test.ts, life by life.
 */
export function ageHazards(flows: AgeFlows, level: number): AgeHazard[] {
  const lastAge = flows.ages.at(-1);
  if (lastAge === undefined) return [];
  const reached = ageBands.filter(({ fromDay }) => fromDay <= lastAge);
  const breaks = [...reached.map(({ fromDay }) => fromDay), Math.min(lastAge + 1, reached.at(-1)?.untilDay ?? lastAge)];
  const counts = cutByAge(flows, breaks);
  const table = lifeTable(counts).rows;
  return reached.flatMap((band, index) => {
    const count = counts[index];
    if (count === undefined) return [];
    const { failed, exposure } = count;
    const years = exposure / daysPerYear;
    const estimate =
      years > 0 ? rateEstimate({ events: failed, unitYears: years, level, method: "poisson-exact" }) : undefined;
    return [{ band, lives: table[index], estimate, failed, years }];
  });
}
