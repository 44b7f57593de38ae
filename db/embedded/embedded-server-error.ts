/** The embedded server cannot run here; the message says why in one sentence and what to do instead. */
export class EmbeddedServerError extends Error {
  override readonly name = "EmbeddedServerError";
}
