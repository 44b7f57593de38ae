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

  #totalOf(pieces: Float64Array, cents: Float64Array): StoredTotal {
    const year = this.#yearCents(cents);
    const range = (placesOf: (future: number) => readonly number[]) => this.#range({ pieces, cents }, placesOf);
    return {
      parts: this.#parts,
      withoutCost: this.#withoutCost,
      months: Array.from({ length: this.months }, (_, month) => range((row) => [row * this.months + month])),
      year: range((row) => Array.from({ length: Math.min(12, this.months) }, (_, month) => row * this.months + month)),
      yearCents: keptQuantiles.map((share) => Math.round(year[Math.floor(share * year.length)] ?? 0)),
    };
  }

  #yearCents(sums: Float64Array): Float64Array {
    return Float64Array.from({ length: this.futures }, (_, row) =>
      sums
        .subarray(row * this.months, row * this.months + Math.min(12, this.months))
        .reduce((sum, cents) => sum + cents, 0),
    ).sort();
  }

  /** @param placesOf where the numbers of a future stand */
  #range(
    { pieces, cents }: { readonly pieces: Float64Array; readonly cents: Float64Array },
    placesOf: (future: number) => readonly number[],
  ): TotalMonth {
    const sums = (of: Float64Array) =>
      Float64Array.from({ length: this.futures }, (_, future) =>
        placesOf(future).reduce((sum, at) => sum + (of[at] ?? 0), 0),
      ).sort();
    return { pieces: rangeOf(sums(pieces)), cents: rangeOf(sums(cents)) };
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
