import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";

export interface OpenSession {
  readonly id: string;
  readonly startedAt: string;
  readonly seenAt: string;
  readonly expiresAt: string;
  /** What the browser calls itself; empty where it said nothing. */
  readonly browser: string;
  readonly address: string;
}

/** Where somebody is signed in, the latest first. */
export async function loadSessions(db: Reader, personId: string): Promise<readonly OpenSession[]> {
  return await db.rows<OpenSession & Record<string, unknown>>(sql`
    select id, created_at::text as "startedAt", coalesce(seen_at, created_at)::text as "seenAt", expires_at::text as "expiresAt",
      coalesce(user_agent, '') as browser, coalesce(ip_address, '') as address
    from sessions where person_id = ${personId} and expires_at > now() and not half_signed_in order by created_at desc, id`);
}
