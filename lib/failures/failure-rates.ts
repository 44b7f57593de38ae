import type { Estimate } from "@/lib/statistics/estimate";
import { type AgainstAges, againstAges } from "./against-ages";
import type { ExposureCells } from "./cells";
import { type Exposure, exposureOf, noExposure } from "./exposure";
import { type GroupKey, groupsWithExposure, inFleet, keyText } from "./groups";
import type { RateQuestion } from "./rate-question";
import { rateWithLimits, type Tally } from "./rate-with-limits";
import { type LeftOutReason, tallyJobs } from "./tally-jobs";

/** Rate of one group, or that it has no exposure to divide by: 3 failures over nothing is no rate. */
export type GroupRate =
  | {
      readonly kind: "rate";
      readonly key: GroupKey;
      /** Per unit-year. */
      readonly estimate: Estimate;
      /** Units that were at risk for at least a day. */
      readonly units: number;
      /** Variance of the by-unit counts over that of a Poisson count; above 1 failures bunch by unit. */
      readonly dispersion: number;
      /** Against what other machines of the same kind and age had. */
      readonly likeAges: AgainstAges;
    }
  | { readonly kind: "no-exposure"; readonly key: GroupKey; readonly events: number };

export interface FailureRates {
  readonly question: RateQuestion;
  /** In the order of the catalogue; every group that could have failed is here, also with 0 failures. */
  readonly groups: readonly GroupRate[];
  /** All that the question covers, as one. */
  readonly fleet: GroupRate;
  /** Jobs that match the question but can't be counted. */
  readonly leftOut: readonly { readonly reason: LeftOutReason; readonly jobs: number }[];
  /** Units of the models asked about that carry no exposure. */
  readonly unplacedUnits: number;
}

const noTally: Tally = { events: 0, eventUnitDays: 0, repeats: 0 };

/**
 * Failures per unit-year by one or two groupings, each with its limits.
 * Events are taken from units that carry exposure and no others, so that numerator and denominator speak of the same
 * machines; what is left out is counted beside the result.
 * Source: exact limits, Garwood (1936); robust by-unit limits, Lawless & Nadeau (1995).
 * Checked: tests/failures/failure-rates.test.ts, by separate code that walks unit by unit.
 */
export function failureRates(cells: ExposureCells, question: RateQuestion): FailureRates {
  const exposure = exposureOf(cells.windows, question);
  const groups = groupsWithExposure(cells, question, exposure);
  const tallies = tallyJobs(cells, question, "with repeats");
  const whole = { ...question, by: [] };
  const all = question.by.includes("year") ? exposureOf(cells.windows, whole) : exposure;
  const fleet = groupsWithExposure(cells, whole, all).get("");
  const likeAges = againstAges(cells, question, exposure);
  const outside = [...tallies.groups]
    .filter(([text]) => !groups.has(text))
    .map(([, { key }]) => ({ key, exposure: noExposure }));
  const asked = new Set(cells.models.filter((model) => inFleet(cells, model, question)).map((model) => model.modelId));

  return {
    question,
    groups: [...groups.values(), ...outside].map(({ key, exposure: own }) =>
      rateOf(key, own, tallies.groups.get(keyText(key))?.tally ?? noTally, question.level, likeAges(key)),
    ),
    fleet: rateOf([], fleet?.exposure ?? noExposure, tallies.whole, question.level, { kind: "nothing-beside-it" }),
    leftOut: [...tallies.leftOut].map(([reason, jobs]) => ({ reason, jobs })),
    unplacedUnits: cells.unplaced.reduce((sum, entry) => sum + (asked.has(entry.modelId) ? entry.units : 0), 0),
  };
}

function rateOf(key: GroupKey, exposure: Exposure, tally: Tally, level: number, likeAges: AgainstAges): GroupRate {
  if (exposure.unitDays === 0) return { kind: "no-exposure", key, events: tally.events };
  return { kind: "rate", key, units: exposure.units, likeAges, ...rateWithLimits(tally, exposure, level) };
}
