// What the technician gave to one step: a reading, or why there is none. Made and numbered on the phone, never changed.
import type { MeterMode, PowerState, ReadingOutcome } from "@/lib/domain/reading";

export const skipReasons = {
  no_access: "No access",
  unsafe: "Not safe to do",
  not_fitted: "Not fitted on this machine",
  other: "Other",
} as const;
export type SkipReason = keyof typeof skipReasons;

export interface SheetReading {
  readonly kind: "reading";
  readonly mode: MeterMode;
  readonly outcome: ReadingOutcome;
  readonly power: PowerState;
  readonly pointA: string | undefined;
  readonly pointB: string | undefined;
  readonly isolated: boolean | undefined;
  readonly loadConnected: boolean | undefined;
  readonly commanded: boolean | undefined;
  readonly temperatureC: number | undefined;
  readonly sheetLow: number | undefined;
  readonly sheetHigh: number | undefined;
  readonly sheetReference: string | undefined;
  /** The cautions stood on the screen and somebody said that they were read: asked before every live step. */
  readonly cautionsRead: boolean;
}

export interface SheetSkip {
  readonly kind: "skip";
  readonly reason: SkipReason;
}

export interface SheetAnswer {
  /** A UUID made on the phone. */
  readonly id: string;
  /** Counted on the phone, from 1: the order of answers, whatever its clock says. */
  readonly sequence: number;
  readonly check: string;
  /** Which of the sheet's readings of this check: 1 unless it is read at several points. */
  readonly time: number;
  readonly given: SheetReading | SheetSkip;
  readonly note: string;
  /** As the phone's clock said, with its offset. */
  readonly at: string;
  /**
   * Ids under which this step was sent before, when the phone had no room to keep it and no word came back: should the
   * server have taken one, or take one yet, this answer stands for it.
   */
  readonly standsFor?: readonly string[] | undefined;
}
