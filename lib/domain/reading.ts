// One measured value or observed state, with everything that decides whether it proves anything.
import type { OwnCheck } from "./own-check";

export const meterModes = [
  "ohm",
  "continuity",
  "volt_ac",
  "volt_dc",
  "ampere",
  "microfarad",
  "inch",
  "inch_water",
  "psi",
  "degree_f",
  "degree_c",
  "observation",
  "fault_code",
] as const;
export type MeterMode = (typeof meterModes)[number];

/** State of the machine while the reading was taken; live steps are for qualified persons only. */
export const powerStates = ["off", "powered_panels_closed", "live"] as const;
export type PowerState = (typeof powerStates)[number];

/** OL and short are states, not numbers; an observation is a word from its check's list. */
export type ReadingOutcome =
  | { readonly kind: "number"; readonly value: number; readonly unit: string }
  | { readonly kind: "open" }
  | { readonly kind: "short" }
  | { readonly kind: "no_reading" }
  | { readonly kind: "finding"; readonly word: string }
  | { readonly kind: "code"; readonly code: string };

export interface Reading {
  readonly number: number;
  /** Key of the check in the catalogue, such as pump_winding. */
  readonly check: string;
  /** The check itself where the company wrote it, as it stood when this was read. */
  readonly own?: OwnCheck | undefined;
  readonly pointA: string | undefined;
  readonly pointB: string | undefined;
  readonly mode: MeterMode;
  readonly outcome: ReadingOutcome;
  readonly power: PowerState;
  /** Part disconnected while measured; undefined where nobody said. */
  readonly isolated: boolean | undefined;
  /** Output measured with its part attached. */
  readonly loadConnected: boolean | undefined;
  /** The diagnostic cycle had commanded the step while this was read. */
  readonly commanded: boolean | undefined;
  readonly temperatureC: number | undefined;
  /** Expected range that the model sheet gives; either end may be open. */
  readonly sheetLow: number | undefined;
  readonly sheetHigh: number | undefined;
  readonly sheetReference: string | undefined;
  readonly note: string | undefined;
  readonly technician: string | undefined;
  readonly takenAt: string | undefined;
}

/** Expected range of one check on one model, with its source and the mark that travels with the value. */
export interface ExpectedRange {
  readonly check: string;
  readonly low: number | undefined;
  readonly high: number | undefined;
  readonly unit: string;
  readonly condition: string | undefined;
  readonly source: string;
  readonly mark: SourceMark;
}

export const sourceMarks = [
  "law",
  "standard",
  "government",
  "published",
  "trade press",
  "common practice, no source",
  "from memory",
  "invented for the demo",
] as const;
export type SourceMark = (typeof sourceMarks)[number];
