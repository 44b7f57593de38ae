// A check that a company wrote itself, as its sheet stood when it was done. It travels with its readings, so that what
// they were held against can be read long after the sheet has changed.
import type { Cause } from "./cause";
import type { MeterMode, PowerState, SourceMark } from "./reading";

export interface OwnCheck {
  /** Begins with `own:`, which no key of the catalogue does. */
  readonly key: string;
  readonly name: string;
  /** Where the leads go, or what is looked at. */
  readonly points: string;
  readonly power: PowerState;
  readonly mode: MeterMode;
  /** Undefined where nothing is measured. */
  readonly unit: string | undefined;
  /** Either end may be open; both are where nothing is measured. */
  readonly low: number | undefined;
  readonly high: number | undefined;
  readonly source: string;
  readonly mark: SourceMark;
  /** What a good result says. */
  readonly says: string;
  /** What may be found where it is looked at; empty for a measurement. */
  readonly words: readonly OwnWord[];
  /** Keys of the cautions that stand beside it; those that its state asks for are among them. */
  readonly cautions: readonly string[];
}

export interface OwnWord {
  readonly word: string;
  readonly state: "good" | "bad" | "outside";
  /** Given where the state is outside. */
  readonly cause: Cause | undefined;
}

export function isOwnKey(key: string): boolean {
  return /^own:[a-z0-9_]{1,50}$/.test(key);
}
