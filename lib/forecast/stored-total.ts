/** Parts and money over many parts, month by month, from sums of futures. */
export interface StoredTotal {
  readonly parts: number;
  /** Of them without a known cost: counted in pieces, left out of the money. */
  readonly withoutCost: number;
  readonly months: readonly TotalMonth[];
  /** The first twelve months together. */
  readonly year: TotalMonth;
  /** What the year may cost, in cents: values of equal chance, ascending; missing in totals of before. */
  readonly yearCents?: readonly number[];
}

export interface TotalMonth {
  readonly pieces: TotalRange;
  readonly cents: TotalRange;
}

export interface TotalRange {
  readonly mean: number;
  readonly low60: number;
  readonly high60: number;
  readonly low90: number;
  readonly high90: number;
}
