import { dayFromNumber } from "@/lib/calendar/day-number";
import type { AgainstAges } from "@/lib/failures/against-ages";
import type { FailureRates, GroupRate } from "@/lib/failures/failure-rates";
import { type EstimateGrade, gradeOf } from "@/lib/statistics/estimate-grade";

/** One group as files and the command print it: never the point without its count, exposure, limits and method. */
export interface RateRecord {
  readonly group: Readonly<Record<string, string>>;
  readonly failures: number;
  readonly unitYears: number;
  readonly units: number;
  /** Per 100 unit-years; null where there is no exposure to divide by. */
  readonly ratePer100: number | null;
  readonly low: number | null;
  readonly high: number | null;
  /** Events that other machines of the kind predict for these ages, and events over them; null where there are no others. */
  readonly predicted: number | null;
  readonly timesPredicted: number | null;
  readonly timesLow: number | null;
  readonly timesHigh: number | null;
  readonly level: number;
  readonly method: string;
  readonly grade: EstimateGrade | "no exposure";
}

export function rateRecord(group: GroupRate, level: number): RateRecord {
  const names = Object.fromEntries(group.key.map((part) => [part.dimension, part.value]));
  if (group.kind === "no-exposure") {
    return {
      group: names,
      failures: group.events,
      unitYears: 0,
      units: 0,
      ratePer100: null,
      low: null,
      high: null,
      ...nothingPredicted,
      level,
      method: "none: no exposure",
      grade: "no exposure",
    };
  }
  const { events, n, point, lo, hi, method } = group.estimate;
  return {
    group: names,
    failures: events,
    unitYears: n,
    units: group.units,
    ratePer100: 100 * point,
    low: 100 * lo,
    high: 100 * hi,
    ...predictionOf(group.likeAges),
    level,
    method,
    grade: gradeOf(group.estimate),
  };
}

const nothingPredicted = { predicted: null, timesPredicted: null, timesLow: null, timesHigh: null };

function predictionOf(likeAges: AgainstAges) {
  if (likeAges.kind !== "ratio") return nothingPredicted;
  const { n, point, lo, hi } = likeAges.estimate;
  return { predicted: n, timesPredicted: point, timesLow: lo, timesHigh: hi };
}

/** The whole answer, with what it is based on. */
export function ratesDocument(rates: FailureRates): Readonly<Record<string, unknown>> {
  const { question } = rates;
  return {
    by: question.by,
    counting: question.counting,
    where: question.where,
    from: question.from === undefined ? null : dayFromNumber(question.from),
    until: dayFromNumber(question.until),
    level: question.level,
    rates: rates.groups.map((group) => rateRecord(group, question.level)),
    all: rateRecord(rates.fleet, question.level),
    leftOut: rates.leftOut,
    unitsWithoutExposure: rates.unplacedUnits,
  };
}
