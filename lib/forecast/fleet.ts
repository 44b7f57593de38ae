import type { SeededDraws } from "@/lib/statistics/demand/seeded-draws";
import { requireNonNegative, requirePositive, requireWholeNumber } from "@/lib/statistics/require";
import type { CumulativeHazard } from "./draw-life";

/** Units whose component has the same age now; one that was replaced began anew. */
export interface AgeGroup {
  /** In months. */
  readonly age: number;
  readonly units: number;
  /** Place in `signals` of what was found about these units: this component in this model, made in that window. */
  readonly signal?: number;
}

/**
 * Failures observed in some units over what lives alone had expected: their hazard is that many times as high, with the
 * doubt of the count (a gamma with half a failure added).
 */
export interface FleetSignal {
  readonly observed: number;
  /** Above 0. */
  readonly expected: number;
}

export interface FleetAtStart {
  readonly inService: readonly AgeGroup[];
  readonly leaving: number;
  readonly wear: readonly number[];
  readonly signals?: readonly FleetSignal[];
}

/** A stretch of time that a fleet lives through. */
export interface Stretch {
  readonly months: number;
  readonly wear: number;
  readonly leaving: number;
  /** Units installed meanwhile, in its middle on average. */
  readonly incoming: number;
}

interface Group {
  age: number;
  units: number;
  readonly multiplier: number;
}

/** One fleet in one future: it ages, fails, is renewed, grows and leaves. */
export class Fleet {
  readonly #groups: Group[];
  readonly #hazard: CumulativeHazard;
  readonly #draws: SeededDraws;

  constructor({ inService, signals }: FleetAtStart, hazard: CumulativeHazard, draws: SeededDraws) {
    const multipliers = (signals ?? []).map(({ observed, expected }) => draws.gamma(observed + 0.5) / expected);
    this.#groups = inService.map(({ age, units, signal }) => ({
      age,
      units,
      multiplier: signal === undefined ? 1 : (multipliers[signal] ?? 1),
    }));
    this.#hazard = hazard;
    this.#draws = draws;
  }

  /** Lets the time pass; returns the failures. What is renewed keeps what was found about its unit. */
  live(stretch: Stretch): number {
    const { months, incoming } = stretch;
    const renewed = new Map<number, number>([[1, incoming]]);
    let failures = 0;
    for (const group of this.#groups) {
      const failed = this.#aged(group, stretch, months);
      failures += failed;
      if (failed > 0) renewed.set(group.multiplier, (renewed.get(group.multiplier) ?? 0) + failed);
    }
    for (const [multiplier, units] of renewed) {
      if (units === 0) continue;
      const fresh = { age: 0, units, multiplier };
      const failed = this.#aged(fresh, { ...stretch, leaving: 0 }, months / 2);
      failures += failed;
      fresh.units += failed;
      this.#groups.push(fresh);
    }
    return failures;
  }

  units(): number {
    return this.#groups.reduce((sum, { units }) => sum + units, 0);
  }

  /** Drops groups that no unit is left in; they would only cost time. */
  tidy(): void {
    const kept = this.#groups.filter(({ units }) => units > 0);
    this.#groups.splice(0, this.#groups.length, ...kept);
  }

  /** Ages the group and takes out what failed and what left; returns the failed. */
  #aged(group: Group, { wear, leaving }: Stretch, months: number): number {
    const risk = wear * group.multiplier * (this.#hazard(group.age + months) - this.#hazard(group.age));
    const failed = this.#draws.binomial(group.units, -Math.expm1(-Math.max(0, risk)));
    group.age += months;
    group.units -= failed;
    if (leaving > 0) group.units -= this.#draws.binomial(group.units, leaving);
    return failed;
  }
}

/** @throws RangeError naming what is wrong */
export function requireFleet({ inService, leaving, wear, signals = [] }: FleetAtStart): void {
  if (!(leaving >= 0 && leaving <= 1)) throw new RangeError(`leaving must lie in 0..1; it is ${leaving}`);
  for (const [i, { observed, expected }] of signals.entries()) {
    requireWholeNumber(`signals[${i}].observed`, observed);
    requirePositive(`signals[${i}].expected`, expected);
  }
  for (const [i, { age, units, signal }] of inService.entries()) {
    requireNonNegative(`inService[${i}].age`, age);
    requireWholeNumber(`inService[${i}].units`, units);
    if (signal !== undefined && signals[signal] === undefined)
      throw new RangeError(`inService[${i}].signal must be a place in signals; it is ${signal}`);
  }
  for (const [month, factor] of wear.entries()) requireNonNegative(`wear[${month}]`, factor);
}
