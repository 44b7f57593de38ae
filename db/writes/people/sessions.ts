import { sql } from "drizzle-orm";
import { inTransaction } from "../../in-transaction";

/** Ends one of a person's own sessions; of somebody else's number nothing is ended. */
export async function endSession(personId: string, sessionId: string): Promise<void> {
  await inTransaction(async (tx) => {
    await tx.rows(sql`delete from sessions where id = ${sessionId} and person_id = ${personId}`);
  });
}

/** Ends all sessions of a person but one, such as the one in use. */
export async function endSessions(personId: string, but?: string): Promise<void> {
  await inTransaction(async (tx) => {
    await tx.rows(sql`delete from sessions where person_id = ${personId} and id is distinct from ${but ?? null}`);
  });
}

/** Notes that a session was used now. */
export async function noteSeen(sessionId: string): Promise<void> {
  await inTransaction(async (tx) => {
    await tx.rows(sql`update sessions set seen_at = now() where id = ${sessionId}`);
  });
}

/** A session that waits for its second factor, or no longer does. */
export async function markHalfSignedIn(sessionId: string, half: boolean): Promise<void> {
  await inTransaction(async (tx) => {
    await tx.rows(sql`update sessions set half_signed_in = ${half}, seen_at = now() where id = ${sessionId}`);
  });
}
