/** A reason to end that is written for the reader: it is printed alone, without the trace of the program. */
export class Refusal extends Error {
  name = "Refusal";
}

export function say(line) {
  console.log(`ohmsworth: ${line}`);
}
