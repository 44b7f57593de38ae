import type { Estimate } from "@/lib/statistics/estimate";
import { observedExpectedEstimate, type RateRatioEstimate, rateRatioEstimate } from "@/lib/statistics/ratio-estimate";
import { compareRecurrence, type RecurrenceComparison } from "@/lib/statistics/recurrence/compare-recurrence";
import { type RecurrenceDifference, recurrenceDifference } from "@/lib/statistics/recurrence/recurrence-difference";
import { stratifiedRatioEstimate } from "@/lib/statistics/stratified-ratio-estimate";
import { type AgeStratum, ageStrata, type SharedStratum, sharedByBoth } from "./age-strata";
import type { ExposureCells } from "./cells";
import { type FailureRates, failureRates, type GroupRate } from "./failure-rates";
import { type LifeDetail, lifeDetail } from "./life-detail";
import { daysPerMonth, daysPerYear } from "./rate-question";
import { unitHistories } from "./unit-histories";
import type { LifeQuestion } from "./visit-spells";

/** One side of a comparison: counts and what is asked of them. Both sides may share units, never their failures. */
export interface ComparedGroup {
  readonly name: string;
  readonly cells: ExposureCells;
  readonly question: LifeQuestion;
}

export interface ComparedSide {
  readonly name: string;
  readonly question: LifeQuestion;
  readonly life: LifeDetail;
  /** Failures per unit-year over all ages together. */
  readonly rate: GroupRate;
  readonly leftOut: FailureRates["leftOut"];
}

/** Named reasons for which two rates cannot be set against each other. */
export type Ratio = RateRatioEstimate | { readonly kind: "no-exposure" } | { readonly kind: "no-shared-ages" };

export interface GroupComparison {
  readonly first: ComparedSide;
  readonly second: ComparedSide;
  /** Rate over rate, whatever the ages. */
  readonly crude: Ratio;
  /** One ratio for all ages, each age compared with its like; it carries the doubt of both groups. */
  readonly likeAges: Ratio;
  /** Failures of the first against those that the second's rates predict for its ages; the prediction is taken as known. */
  readonly observedExpected:
    | { readonly kind: "estimate"; readonly estimate: Estimate }
    | { readonly kind: "nothing-expected" };
  readonly ages: readonly AgeStratum[];
  /** Failures of the first at ages that the second does not have; not in the ratio at like ages. */
  readonly eventsElsewhere: number;
  /** One test of the mean numbers of failures per unit over all ages, right also where the same units fail again. */
  readonly repeats: RecurrenceComparison;
  /** Empty where one group was watched from a later age on than the other: their numbers begin at different ages. */
  readonly repeatsByAge: readonly RecurrenceDifference[];
}

/** Few, since many ages would be many tests. */
const chosenYears = [1, 2, 5, 10];

/**
 * Everything about one group against another: curves, rates, ages, repeat failures. The reference is the second group
 * alone, so the first is never part of what it is measured by.
 * Source: exact ratio, Fay (2010); indirect standardisation, Breslow & Day (1987); repeats, Cook, Lawless & Nadeau (1996).
 * Checked: tests/failures/compare-groups.test.ts, unit by unit.
 */
export function compareGroups(one: ComparedGroup, other: ComparedGroup): GroupComparison {
  const [first, second] = [sideOf(one), sideOf(other)];
  const ages = ageStrata(first.byAge, second.byAge);
  const shared = sharedByBoth(ages);
  const { level } = one.question;
  const histories = [unitHistories(one.cells, one.question), unitHistories(other.cells, other.question)] as const;
  return {
    first: first.side,
    second: second.side,
    crude: crudeRatio(first.side.rate, second.side.rate, level),
    likeAges: shared.length === 0 ? { kind: "no-shared-ages" } : stratifiedRatioEstimate({ strata: shared, level }),
    observedExpected: observedAgainstExpected(shared, level),
    ages,
    eventsElsewhere: ages.reduce((sum, { first: group, second: reference }) => {
      return sum + (reference.exposure > 0 ? 0 : group.events);
    }, 0),
    repeats: compareRecurrence(...histories),
    repeatsByAge: beginTogether(first.side, second.side)
      ? recurrenceDifference(...histories, {
          ages: chosenYears.map((years) => years * daysPerYear),
          confidence: level,
          variance: "robust",
        })
      : [],
  };
}

/** Within a month of each other, which is less than any failure count can tell. */
function beginTogether({ life: one }: ComparedSide, { life: other }: ComparedSide): boolean {
  return Math.abs(one.unitsFromAge - other.unitsFromAge) <= daysPerMonth;
}

function sideOf({ name, cells, question }: ComparedGroup) {
  const where = { ...question.where, component: question.component };
  const byAge = failureRates(cells, { ...question, where, by: ["age"], counting: "failures" });
  const side: ComparedSide = {
    name,
    question,
    life: lifeDetail(cells, question),
    rate: byAge.fleet,
    leftOut: byAge.leftOut,
  };
  return { side, byAge };
}

function crudeRatio(first: GroupRate, second: GroupRate, level: number): Ratio {
  if (first.kind === "no-exposure" || second.kind === "no-exposure") return { kind: "no-exposure" };
  return rateRatioEstimate({
    group: { events: first.estimate.events, exposure: first.estimate.n },
    rest: { events: second.estimate.events, exposure: second.estimate.n },
    level,
  });
}

function observedAgainstExpected(shared: readonly SharedStratum[], level: number): GroupComparison["observedExpected"] {
  const expected = shared.reduce((sum, stratum) => sum + stratum.expected, 0);
  const observed = shared.reduce((sum, { first }) => sum + first.events, 0);
  if (!(expected > 0)) return { kind: "nothing-expected" };
  return { kind: "estimate", estimate: observedExpectedEstimate({ observed, expected, level }) };
}
