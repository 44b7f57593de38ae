import type { Day } from "@/lib/calendar/day";
import type { AnchorDay, CountedTerm } from "@/lib/calendar/term";

export interface PolicyClocks {
  readonly filing: FilingClock;
  readonly resubmission: ResubmissionClock;
  readonly partHold: PartHoldClock;
}

/** How long after completion a claim may be filed. */
export interface FilingClock {
  readonly within: CountedTerm;
  readonly anchorDay: AnchorDay;
  /** Which act must fall in the window: our sending or the payer's receipt. */
  readonly by: "sending" | "receipt";
  /** A policy that is silent does not roll. */
  readonly roll: "none" | "next_business_day";
  /** Days besides weekends on which the payer does not work; they count only where the last day rolls. */
  readonly holidays?: readonly Day[] | undefined;
}

/** How long after a rejection the corrected claim may follow, and how often. */
export interface ResubmissionClock {
  readonly within: CountedTerm;
  readonly times: number;
}

/** How long the failed part must be kept, counted from filing or from payment. */
export interface PartHoldClock {
  readonly within: CountedTerm;
  readonly from: "filed" | "paid";
}
