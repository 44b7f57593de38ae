import { noteWhoseSession } from "@/app/_limits/whose-sessions";
import { readOnly } from "@/db/client";
import { loadPerson } from "@/db/queries/people";
import { loadShop } from "@/db/queries/shop";
import { noteSeen } from "@/db/writes/people/sessions";
import type { Role } from "@/lib/people/role";
import { noteEveryMs, sessionHolds } from "@/lib/people/session-rules";
import { signInLibrary } from "./sign-in-library";

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

interface Session {
  /** Only the password was shown so far. */
  readonly half: boolean;
  readonly person: SignedIn;
}

/** The session that a request belongs to, while it holds: the server's own record of it decides, never the cookie alone. */
export async function loadSession(headers: Headers): Promise<Session | undefined> {
  if (!headers.has("cookie")) return undefined;
  const { api } = await signInLibrary();
  const found = await api.getSession({ headers });
  if (found === null) return undefined;
  const { id, createdAt, seenAt, halfSignedIn } = found.session;
  const { person, isDemo } = await readOnly(async (db) => ({
    person: await loadPerson(db, found.user.id),
    isDemo: (await loadShop(db)).demo,
  }));
  if (person === undefined || person.endedAt !== undefined || (person.demo && !isDemo)) return undefined;
  const now = Date.now();
  const lastSeen = seenAt?.getTime() ?? createdAt.getTime();
  noteWhoseSession(found.session.token, person.id);
  if (!sessionHolds({ role: person.role, startedAt: createdAt.getTime(), seenAt: lastSeen, now })) return undefined;
  if (now - lastSeen > noteEveryMs) await noteSeen(id);
  const { name, email, role, technician, hasSecondFactor } = person;
  return {
    half: halfSignedIn === true,
    person: { id: person.id, name, email, role, technician, hasSecondFactor, sessionId: id },
  };
}
