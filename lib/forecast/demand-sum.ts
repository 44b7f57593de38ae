import { requireWholeNumber } from "@/lib/statistics/require";
import type { DemandPaths } from "./paths";
import type { StoredTotal, TotalMonth, TotalRange } from "./stored-total";

export interface PartFutures {
  readonly paths: DemandPaths;
  /** Of one piece; undefined where nobody knows. */
  readonly unitCents: number | undefined;
}

/**
 * Adds parts up future by future, so that the range of a whole is that of its sums: ranges themselves must not be
 * added, which would make the whole look less sure than it is.
 * @throws RangeError where the parts differ in futures or months
 */
export class DemandSum {
  #parts = 0;
  #withoutCost = 0;
  readonly #pieces: Float64Array;
  readonly #cents: Float64Array;

  constructor(
    private readonly futures: number,
    private readonly months: number,
  ) {
    requireWholeNumber("futures", futures);
    requireWholeNumber("months", months);
    this.#pieces = new Float64Array(futures * months);
    this.#cents = new Float64Array(futures * months);
  }

  add({ paths, unitCents }: PartFutures): void {
    if (paths.length !== this.futures || paths[0]?.length !== this.months)
      throw new RangeError(`paths must hold ${this.futures} futures of ${this.months} months`);
    this.#parts += 1;
    if (unitCents === undefined) this.#withoutCost += 1;
    let at = 0;
    for (const row of paths)
      for (const count of row) {
        this.#pieces[at] = (this.#pieces[at] ?? 0) + count;
        this.#cents[at] = (this.#cents[at] ?? 0) + count * (unitCents ?? 0);
        at += 1;
      }
  }

  /** @param pace a factor for each month of each future, future by future, that all sums have in common */
  total(pace?: Float64Array): StoredTotal {
    const [pieces, cents] = [this.#pieces, this.#cents].map((sums) =>
      pace === undefined ? sums : sums.map((sum, at) => sum * (pace[at] ?? 1)),
    );
    return this.#totalOf(pieces ?? this.#pieces, cents ?? this.#cents);
  }

  /** Adds a whole that has been added up already. @throws RangeError where it differs in futures or months */
  include(other: DemandSum): void {
    if (other.futures !== this.futures || other.months !== this.months)
      throw new RangeError(`other must hold ${this.futures} futures of ${this.months} months`);
    this.#parts += other.#parts;
    this.#withoutCost += other.#withoutCost;
    for (let at = 0; at < this.#pieces.length; at++) {
      this.#pieces[at] = (this.#pieces[at] ?? 0) + (other.#pieces[at] ?? 0);
      this.#cents[at] = (this.#cents[at] ?? 0) + (other.#cents[at] ?? 0);
    }
  }

  #totalOf(pieces: Float64Array, cents: Float64Array): StoredTotal {
    const range = (from: number, until: number): TotalMonth => ({
      pieces: rangeOf(this.#sorted(pieces, from, until)),
      cents: rangeOf(this.#sorted(cents, from, until)),
    });
    const yearMonths = Math.min(12, this.months);
    const year = this.#sorted(cents, 0, yearMonths);
    return {
      parts: this.#parts,
      withoutCost: this.#withoutCost,
      months: Array.from({ length: this.months }, (_, month) => range(month, month + 1)),
      year: range(0, yearMonths),
      yearCents: keptQuantiles.map((share) => Math.round(year[Math.floor(share * year.length)] ?? 0)),
    };
  }

  /** Sums over the months from one until before another, one for each future, ascending. */
  #sorted(sums: Float64Array, from: number, until: number): Float64Array {
    const each = new Float64Array(this.futures);
    for (let future = 0; future < this.futures; future++) {
      let sum = 0;
      for (let month = from; month < until; month++) sum += sums[future * this.months + month] ?? 0;
      each[future] = sum;
    }
    return each.sort();
  }
}

/** Middles of fifty equal shares of the futures. */
const keptQuantiles = Array.from({ length: 50 }, (_, i) => (i + 0.5) / 50);

function rangeOf(sorted: Float64Array): TotalRange {
  const at = (share: number) =>
    Math.round(sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))] ?? 0);
  return {
    mean: sorted.reduce((sum, value) => sum + value, 0) / Math.max(1, sorted.length),
    low60: at(0.2),
    high60: at(0.8),
    low90: at(0.05),
    high90: at(0.95),
  };
}
