export interface Held {
  readonly file: string;
  /** Its title as it stands in the file, or the beginning of it. */
  readonly test: string;
}
