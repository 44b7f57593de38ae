import type { Day } from "@/lib/calendar/day";
import type { EarlierJob } from "@/lib/domain/job";
import type { ExpectedRange } from "@/lib/domain/reading";
import type { Unit } from "@/lib/domain/unit";
import type { Sheet } from "@/lib/sheets/sheet";
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";
import type { SheetBasis } from "@/lib/sheets/sheet-basis";
import type { PhotoOnSheet } from "../_device/read-device";

/** What the page brings to the phone. The complaint is not in it: it may name the customer, and the page is kept on the device. */
export interface SheetView {
  readonly jobNumber: string;
  /** Who opened the page, by their number here. */
  readonly person: string;
  readonly requestedOn: Day;
  readonly today: Day;
  readonly symptom: string;
  readonly technician: string | undefined;
  readonly callbackOf: string | undefined;
  readonly unit: Unit;
  readonly sheets: readonly Sheet[];
  readonly basis: SheetBasis | undefined;
  readonly ranges: readonly ExpectedRange[];
  readonly answers: readonly SheetAnswer[];
  readonly photos: readonly PhotoOnSheet[];
  /** Fault codes that machines of this maker have shown. */
  readonly codes: readonly string[];
  readonly earlier: readonly EarlierJob[];
  /** Within this many days of a completion the same trouble counts as a return. */
  readonly repeatDays: number;
  /** What the shop wants said about this model or serial range. */
  readonly notes: readonly string[];
}
