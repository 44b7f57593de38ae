import type { Role } from "./role";

/** From signing in to signing in again, whatever is done meanwhile: one working day. Own choice, inside the 24 hours of NIST SP 800-63B-4 (from memory). */
export const longestSessionSeconds = 12 * 60 * 60;
/** Without a request, at the desk. Own choice, inside the hour of NIST SP 800-63B-4 (from memory). */
export const idleMs = 30 * 60_000;
/** A clock may be put back by so much without ending sessions. Own choice. */
const putBackMs = 24 * 60 * 60_000;
/** How old the note of the last request may get before it is written anew. */
export const noteEveryMs = 60_000;

interface Times {
  readonly role: Role;
  /** Milliseconds since 1970, as are the others. */
  readonly startedAt: number;
  readonly seenAt: number;
  readonly now: number;
}

/**
 * Whether a session still holds. A desk is left alone, so half an hour without a request ends it. A technician's phone
 * lies beside the machine while a part is changed and is locked by itself, so there only the working day counts. A
 * clock that was put back by a day ends nothing; but a session that begins later than that from now was begun by a clock
 * that was wrong, and would last until it is right.
 */
export function sessionHolds({ role, startedAt, seenAt, now }: Times): boolean {
  const age = now - startedAt;
  if (age > longestSessionSeconds * 1000 || age < -putBackMs) return false;
  return role === "technician" || now - seenAt <= idleMs;
}
