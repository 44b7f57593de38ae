// Demand from lives: how many units stand at which age, and when what they carry fails.
import { type SeededDraws, seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { requireNonNegative, requirePositive, requireWholeNumber } from "@/lib/statistics/require";
import type { CumulativeHazard } from "./draw-life";

/** Units whose component has the same age now; one that was replaced began anew. */
export interface AgeGroup {
  /** In months. */
  readonly age: number;
  readonly units: number;
}

/**
 * A share known from counts: so many of so many; its doubt is that of a beta with half of each added (Jeffreys).
 * Of an infinite number it is certain: 1.
 */
export interface CountedShare {
  readonly of: number;
  readonly counted: number;
}

export interface FleetQuestion {
  /** Lives that may be the true one, one per future drawn; ages in months. See `drawLives`. */
  readonly lives: readonly CumulativeHazard[];
  readonly inService: readonly AgeGroup[];
  /** Months ahead, 1 to 24. */
  readonly horizon: number;
  /** Units newly installed in each coming month; shorter than the horizon means none after. */
  readonly incoming: readonly number[];
  /** Chance that a unit leaves service in a month, 0..1. */
  readonly leaving: number;
  /** How often a failure becomes a repair of ours, and how often a repair takes this part. */
  readonly ourShare: CountedShare;
  readonly usesPart: CountedShare;
  /** Pieces per repair that takes the part, 1 or more. */
  readonly quantity: number;
  /** Wear of each coming month over an even one, where data show a season; shorter than the horizon means 1 after. */
  readonly wear: readonly number[];
  readonly seed: number;
}

/**
 * Futures of the demand for one part, month by month: for each possible life the fleet is let age, fail, be renewed,
 * grow and leave, and the failures become repairs and parts by chance. The spread of the futures is therefore that of
 * the counts and that of what is not known about life and shares. One seed gives one answer.
 * @returns one row per life, one number of parts per month; rows of several parts drawn with the same seed and number of
 *   lives may be added row by row
 * @throws RangeError for an argument outside its range
 * Source: Meeker & Escobar (1998), Statistical Methods for Reliability Data, chapter 12; renewal of the replaced.
 * Checked: tests/forecast/life-demand.test.ts, against expected counts by hand.
 */
export function lifeDemand(question: FleetQuestion): readonly (readonly number[])[] {
  requireQuestion(question);
  const draws = seededDraws(question.seed);
  return question.lives.map((hazard) => oneFuture(question, hazard, draws));
}

function oneFuture(question: FleetQuestion, hazard: CumulativeHazard, draws: SeededDraws): number[] {
  const share = drawShare(question.ourShare, draws) * drawShare(question.usesPart, draws);
  const groups = question.inService.map(({ age, units }) => ({ age, units }));
  return Array.from({ length: question.horizon }, (_, month) => {
    // What comes or is renewed in a month does so in its middle, on average.
    const fresh = { age: 0, units: question.incoming[month] ?? 0 };
    const wear = question.wear[month] ?? 1;
    const before = groups.reduce(
      (sum, group) => sum + agedOneMonth(group, { hazard, wear, leaving: question.leaving, draws }),
      0,
    );
    const early = agedOneMonth(fresh, { hazard, wear, leaving: 0, draws, months: 0.5 });
    fresh.units += before + early;
    if (fresh.units > 0) groups.push(fresh);
    return question.quantity * draws.binomial(before + early, share);
  });
}

interface MonthOfLife {
  readonly hazard: CumulativeHazard;
  readonly wear: number;
  readonly leaving: number;
  readonly draws: SeededDraws;
  readonly months?: number;
}

/** Ages the group and takes out what failed (renewed, so it begins anew elsewhere) and what left; returns the failed. */
function agedOneMonth(
  group: { age: number; units: number },
  { hazard, wear, leaving, draws, months = 1 }: MonthOfLife,
): number {
  const risk = wear * (hazard(group.age + months) - hazard(group.age));
  const failed = draws.binomial(group.units, -Math.expm1(-Math.max(0, risk)));
  group.age += months;
  group.units -= failed;
  group.units -= draws.binomial(group.units, leaving);
  return failed;
}

function drawShare({ of, counted }: CountedShare, draws: SeededDraws): number {
  if (counted === of && of === Number.POSITIVE_INFINITY) return 1;
  const yes = draws.gamma(counted + 0.5);
  return yes / (yes + draws.gamma(of - counted + 0.5));
}

function requireQuestion(question: FleetQuestion): void {
  const { horizon, leaving, quantity } = question;
  if (question.lives.length === 0) throw new RangeError("lives must hold at least one");
  requireWholeNumber("horizon", horizon);
  if (horizon < 1 || horizon > 24) throw new RangeError(`horizon must lie in 1..24 months; it is ${horizon}`);
  if (!(leaving >= 0 && leaving <= 1)) throw new RangeError(`leaving must lie in 0..1; it is ${leaving}`);
  requireWholeNumber("quantity", quantity);
  requirePositive("quantity", quantity);
  for (const [i, { age, units }] of question.inService.entries()) {
    requireNonNegative(`inService[${i}].age`, age);
    requireWholeNumber(`inService[${i}].units`, units);
  }
  for (const [month, units] of question.incoming.entries()) requireWholeNumber(`incoming[${month}]`, units);
  for (const [month, wear] of question.wear.entries()) requireNonNegative(`wear[${month}]`, wear);
  for (const name of ["ourShare", "usesPart"] as const) {
    const { of, counted } = question[name];
    if (!(counted >= 0 && counted <= of))
      throw new RangeError(`${name}.counted must lie in 0..${of}; it is ${counted}`);
  }
}
