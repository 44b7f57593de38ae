import { noteWhoseSession } from "@/app/_limits/whose-sessions";
import { readOnly } from "@/db/client";
import { loadSessionByMark } from "@/db/queries/session-by-mark";
import { noteSeen } from "@/db/writes/people/sessions";
import type { Role } from "@/lib/people/role";
import { noteEveryMs, sessionHolds } from "@/lib/people/session-rules";
import { serverSecret } from "./server-secret";
import { sessionMarkIn } from "./session-cookie";

export interface SignedIn {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  /** The name that a technician's jobs are written under. */
  readonly technician: string | undefined;
  readonly hasSecondFactor: boolean;
  readonly sessionId: string;
}

/** Who is signed in, both factors shown; undefined for nobody. */
export async function loadSignedIn(headers: Headers): Promise<SignedIn | undefined> {
  const session = await loadSession(headers);
  return session === undefined || session.half ? undefined : session.person;
}

export interface Session {
  /** Only the password was shown so far. */
  readonly half: boolean;
  readonly person: SignedIn;
  /** Whether the company is the invented one. */
  readonly isDemo: boolean;
}

/**
 * The session that a request belongs to, while it holds: the server's own record of it decides, never the cookie alone. It is
 * read here and not by the library, which asks twice and is told nothing of people and of the company: every page begins with it.
 */
export async function loadSession(headers: Headers): Promise<Session | undefined> {
  if (!headers.has("cookie")) return undefined;
  serverSecret(); // refuses a weak one, with which anybody could sign a mark
  const mark = sessionMarkIn(headers.get("cookie") ?? undefined);
  if (mark === undefined) return undefined;
  const found = await readOnly((db) => loadSessionByMark(db, mark));
  if (found === undefined) return undefined;
  const { id, personId, startedAt, seenAt, expiresAt, role, isDemo } = found;
  const now = Date.now();
  if (expiresAt < now || found.isShutOut) return undefined; // one that is over is kept: the clock may be wrong
  noteWhoseSession(mark, personId);
  if (!sessionHolds({ role, startedAt, seenAt, now })) return undefined;
  if (Math.abs(now - seenAt) > noteEveryMs) await noteSeen(id); // also where the clock was put back, so that it can run out again
  const { name, email, hasSecondFactor, technician } = found;
  return {
    half: found.half,
    person: { id: personId, name, email, role, technician: technician ?? undefined, hasSecondFactor, sessionId: id },
    isDemo,
  };
}
