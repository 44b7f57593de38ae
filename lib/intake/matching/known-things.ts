/** What is on file already, for offers beside a cell. Every number is asked for as `normalised` writes it. */
export interface KnownThings {
  readonly hasSerial: (serial: string) => boolean;
  readonly hasModel: (model: string) => boolean;
  /** Models on file that begin so, as they are written there; a few are enough. */
  readonly modelsBeginning: (model: string) => readonly string[];
  /** The newer part number that stands in for this one, as it is written there. */
  readonly partReplacedBy: (partNumber: string) => string | undefined;
}
