import { chiSquareQuantile, chiSquareUpperQuantile } from "../chi-square-quantile";
import { requireProbability, requireWholeNumber } from "../require";
import { freeRepairs, type RepairRecord } from "./repair-record";

/**
 * Power-law process by maximum likelihood: mean repairs of one system by age t are (t / scale)^shape.
 * Shape below 1: repairs thin out; above 1: they come faster and faster.
 * @param records        one per system, watched from age 0
 * @param confidence     two-sided level in (0, 1) of the shape's limits; no default
 * @param minimumEvents  fewest repairs to accept: whole number, 1 or more; no default
 * @returns shape with chi-square limits (exact for one system or common end ages, given the counts), scale in the unit of age; or why none
 * @throws RangeError for an argument outside its range
 * Source: Crow (1974), Reliability Analysis for Complex Repairable Systems; Rigdon and Basu (2000), chapter 5.
 * Checked: tests/statistics/recurrence/power-law.test.ts, by hand and by the slope of the likelihood.
 */
export function fitPowerLaw(records: readonly RepairRecord[], options: PowerLawOptions): PowerLawFit {
  requireProbability("confidence", options.confidence);
  requireWholeNumber("minimumEvents", options.minimumEvents);
  const free = freeRepairs(records).reduce((sum, { repairs }) => sum + repairs.length, 0);
  const repairs = records.reduce((sum, record) => sum + record.repairs.length, 0);
  if (repairs === 0) return { kind: "refused", reason: "no-events", repairs };
  if (repairs < options.minimumEvents) return { kind: "refused", reason: "too-few-events", repairs };
  const shape = steepestShape(records, repairs);
  if (shape === "flat-likelihood" || free === 0) return { kind: "refused", reason: "flat-likelihood", repairs };
  const longest = records.reduce((most, { end }) => Math.max(most, end), 0);
  const grown = records.reduce((sum, { end }) => sum + (end / longest) ** shape, 0);
  const tail = (1 - options.confidence) / 2;
  return {
    kind: "fitted",
    repairs,
    shape,
    low: (shape * chiSquareQuantile(tail, 2 * free)) / (2 * repairs),
    high: (shape * chiSquareUpperQuantile(tail, 2 * free)) / (2 * repairs),
    scale: longest * (grown / repairs) ** (1 / shape),
  };
}

export interface PowerLawOptions {
  readonly confidence: number;
  readonly minimumEvents: number;
}

export type PowerLawFit =
  | {
      readonly kind: "fitted";
      readonly repairs: number;
      readonly shape: number;
      readonly low: number;
      readonly high: number;
      /** Age by which one repair per system is expected. */
      readonly scale: number;
    }
  | {
      readonly kind: "refused";
      readonly reason: "no-events" | "too-few-events" | "flat-likelihood";
      readonly repairs: number;
    };

/**
 * Root of N / shape − N × (weighted mean log end) + Σ log repair: it falls throughout, since the log-likelihood is
 * concave in the shape. Found by halving in the log of the shape: a few dozen terms, and no step can go astray.
 */
function steepestShape(records: readonly RepairRecord[], count: number): number | "flat-likelihood" {
  const longest = records.reduce((most, { end }) => Math.max(most, end), 0);
  const logRepairs = records.flatMap(({ repairs }) => repairs).reduce((sum, age) => sum + Math.log(age / longest), 0);
  const slope = (shape: number) => {
    let weight = 0;
    let weighted = 0;
    for (const { end } of records) {
      const part = (end / longest) ** shape;
      weight += part;
      weighted += part * Math.log(end / longest);
    }
    return count / shape - (count * weighted) / weight + logRepairs;
  };
  let [low, high] = [1e-6, 1e6];
  if (!(slope(low) > 0 && slope(high) < 0)) return "flat-likelihood";
  for (let step = 0; step < 200 && high / low > 1 + 1e-15; step++) {
    const middle = Math.sqrt(low * high);
    if (slope(middle) > 0) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}
