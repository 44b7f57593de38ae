import { requireNonNegative, requireProbability, requireWholeNumber } from "../require";
import { studentQuantile } from "../student-t";

/**
 * Event rate where one unit can fail again and again: the interval is built from the spread between units, so it
 * holds whether or not a unit's failures come in bunches. The plain Poisson interval is too narrow when they do.
 * Units enter only through sums, which a database can form without sending a row per unit.
 * @param units            whole number: units under observation
 * @param events           Σ events over the units
 * @param exposure         Σ exposure, above 0
 * @param eventsSquared    Σ events²
 * @param eventsExposure   Σ events × exposure
 * @param exposureSquared  Σ exposure²
 * @param confidence       two-sided level in (0, 1)
 * @returns the rate with limits on the logarithmic scale and Student's multiplier with units − 1 degrees of
 *   freedom, and the dispersion (1 when failures are independent); or why no such interval exists
 * @throws RangeError for an argument outside its range
 * Source: ratio estimator, Cochran (1977), Sampling Techniques, section 6.4; Lawless & Nadeau (1995),
 *   Technometrics 37, 158-168.
 * Checked: tests/statistics/robust-rate.test.ts, by definition and by simulation.
 */
export function robustRate(input: UnitSums): RobustRate {
  const { units, events, exposure, confidence } = input;
  requireSums(input);
  if (units < 2) return { kind: "too-few-units", units };
  if (events === 0) return { kind: "no-events" };
  const rate = events / exposure;
  const residuals = input.eventsSquared - 2 * rate * input.eventsExposure + rate * rate * input.exposureSquared;
  const squares = (Math.max(0, residuals) * units) / (units - 1);
  const relative = Math.sqrt(squares) / events;
  const factor = Math.exp(-studentQuantile((1 - confidence) / 2, units - 1) * relative);
  return { kind: "interval", point: rate, low: rate / factor, high: rate * factor, dispersion: squares / events };
}

export interface UnitSums {
  readonly units: number;
  readonly events: number;
  readonly exposure: number;
  readonly eventsSquared: number;
  readonly eventsExposure: number;
  readonly exposureSquared: number;
  readonly confidence: number;
}

export type RobustRate =
  | {
      readonly kind: "interval";
      readonly point: number;
      readonly low: number;
      readonly high: number;
      readonly dispersion: number;
    }
  | { readonly kind: "too-few-units"; readonly units: number }
  | { readonly kind: "no-events" };

/** The sums that `robustRate` wants, from one row per unit. */
export function unitSums(
  rows: readonly { readonly events: number; readonly exposure: number }[],
): Omit<UnitSums, "confidence"> {
  const sum = (pick: (events: number, exposure: number) => number) =>
    rows.reduce((total, { events, exposure }) => total + pick(events, exposure), 0);
  return {
    units: rows.length,
    events: sum((events) => events),
    exposure: sum((_, exposure) => exposure),
    eventsSquared: sum((events) => events * events),
    eventsExposure: sum((events, exposure) => events * exposure),
    exposureSquared: sum((_, exposure) => exposure * exposure),
  };
}

function requireSums(sums: UnitSums): void {
  requireWholeNumber("units", sums.units);
  requireWholeNumber("events", sums.events);
  if (!(sums.exposure > 0)) throw new RangeError(`exposure must be above 0; it is ${sums.exposure}`);
  requireNonNegative("eventsSquared", sums.eventsSquared);
  requireNonNegative("eventsExposure", sums.eventsExposure);
  requireNonNegative("exposureSquared", sums.exposureSquared);
  requireProbability("confidence", sums.confidence);
}
