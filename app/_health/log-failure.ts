import { logLine } from "./log-line";
import { placeOfRequest } from "./place-of-request";

interface Failed {
  readonly method: string;
  readonly path: string;
  /** A page, an action of one, or an address for programs. */
  readonly kind: string;
}

/**
 * One line for what a page or an action threw, under the code that the page shows (app/error.tsx): which kind of page, and
 * nothing of what was asked for. What it was in full, without values, the framework prints beside it under the same code.
 */
export function logFailure(error: unknown, { method, path, kind }: Failed): void {
  const code = typeof error === "object" && error !== null && "digest" in error ? String(error.digest) : undefined;
  logLine({ level: "error", what: "failure", method, place: placeOfRequest(path), kind, failure: code });
}
