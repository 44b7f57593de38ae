import { type CountDistribution, countMean } from "@/lib/statistics/demand/count-distribution";
import type { TruckPart, VisitKind } from "./truck-stock";

/** What a truck carries and how many visits that lets it do at once; purchases are tried before they are made. */
export class Truck {
  readonly #loads = new Map<string, { pieces: number; readonly shares: readonly number[] }>();
  readonly #kinds: readonly VisitKind[];
  readonly #kindsWith = new Map<string, VisitKind[]>();

  constructor(parts: readonly TruckPart[], kinds: readonly VisitKind[]) {
    for (const { part, carried, demand } of parts)
      this.#loads.set(part, { pieces: carried, shares: metShares(demand) });
    this.#kinds = kinds;
    for (const kind of kinds) {
      for (const part of kind.parts) this.#kindsWith.set(part, [...(this.#kindsWith.get(part) ?? []), kind]);
    }
  }

  /** Expected visits done at once. */
  visitsDone(): number {
    return this.#kinds.reduce((sum, kind) => sum + this.#done(kind, []), 0);
  }

  /** How many more with one of each of these. */
  gainOf(added: readonly string[]): number {
    const concerned = new Set(added.flatMap((part) => this.#kindsWith.get(part) ?? []));
    let gain = 0;
    for (const kind of concerned) gain += this.#done(kind, added) - this.#done(kind, []);
    return gain;
  }

  add(added: readonly string[]): void {
    for (const part of added) {
      const load = this.#loads.get(part);
      if (load !== undefined) load.pieces += 1;
    }
  }

  #done({ parts, visits }: VisitKind, added: readonly string[]): number {
    return parts.reduce((done, part) => {
      const load = this.#loads.get(part);
      if (load === undefined) return 0;
      return done * (load.shares[load.pieces + (added.includes(part) ? 1 : 0)] ?? 1);
    }, visits);
  }
}

/**
 * Share of the demand that 0, 1, 2 … pieces meet: E min(demand, pieces) / E demand; beyond the end of the list all of
 * it. Where nothing is asked for, nothing is missing.
 */
export function metShares(demand: CountDistribution): readonly number[] {
  const mean = countMean(demand);
  if (mean === 0) return [];
  const shares = [0];
  let more = 1;
  let met = 0;
  for (let pieces = 1; pieces < demand.length; pieces++) {
    more -= demand[pieces - 1] ?? 0;
    met += Math.max(0, more);
    shares.push(Math.min(1, met / mean));
  }
  return shares;
}
