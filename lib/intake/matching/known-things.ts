import type { NumbersOnFile } from "./numbers-on-file";

/** What is on file already, for offers beside a cell. Every number is asked for as `normalised` writes it. */
export interface KnownThings {
  readonly serials: NumbersOnFile;
  readonly models: NumbersOnFile;
  /** Models on file that begin so, as they are written there; a few are enough. */
  readonly modelsBeginning: (model: string) => readonly string[];
  /** The newer part number that stands in for this one, as it is written there. */
  readonly partReplacedBy: (partNumber: string) => string | undefined;
}
