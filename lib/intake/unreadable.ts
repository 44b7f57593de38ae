import type { FileProblem } from "./parsed";

/** Thrown inside the reading of a stream, where a value cannot be handed through; whoever opened the stream turns it back into one. */
export class Unreadable extends Error {
  override readonly name = "Unreadable";
  readonly found: FileProblem;

  constructor(found: FileProblem) {
    super(found.problem);
    this.found = found;
  }
}
