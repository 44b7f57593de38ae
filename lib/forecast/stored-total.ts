/** Parts and money over many parts, month by month, from sums of futures. */
export interface StoredTotal {
  readonly parts: number;
  /** Of them without a known cost: counted in pieces, left out of the money. */
  readonly withoutCost: number;
  readonly months: readonly TotalMonth[];
  /** The first twelve months together. */
  readonly year: TotalMonth;
  /** Of the pace that all components have in common from month to month; 0 or missing where none was found. */
  readonly paceVariance?: number;
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
