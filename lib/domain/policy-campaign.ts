import type { Day } from "@/lib/calendar/day";
import type { PayItem } from "./pay-item";

/** Serials compare as normalised text of equal length; both ends belong to the range. */
export interface SerialRange {
  readonly from: string;
  readonly to: string;
}

/** A named fix on a serial range at the payer's cost, at any age. */
export interface Campaign {
  readonly key: string;
  readonly name: string;
  readonly serials: readonly SerialRange[];
  readonly component: string;
  readonly startsOn?: Day | undefined;
  /** Last day; no end where absent. */
  readonly endsOn?: Day | undefined;
  readonly pays: readonly PayItem[];
  readonly sourceDocument: string;
}
