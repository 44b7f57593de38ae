import { sql } from "drizzle-orm";
import type { Role } from "@/lib/people/role";
import type { Reader } from "../database-types";

/** A session as the server recorded it, with whose it is; instants in milliseconds since 1970. */
export interface RecordedSession {
  readonly id: string;
  readonly startedAt: number;
  readonly seenAt: number;
  readonly expiresAt: number;
  /** Only the password was shown so far. */
  readonly half: boolean;
  readonly personId: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly technician: string | null;
  readonly hasSecondFactor: boolean;
  /** No longer with the company, or of the invented one where the company is a real one now. */
  readonly isShutOut: boolean;
  readonly isDemo: boolean;
}

/** One statement, since every page and every part of one begins with it. */
export async function loadSessionByMark(db: Reader, mark: string): Promise<RecordedSession | undefined> {
  const [found] = await db.rows<RecordedSession & Record<string, unknown>>(sql`
    select s.id, ${milliseconds("s.created_at")} as "startedAt", ${milliseconds("coalesce(s.seen_at, s.created_at)")} as "seenAt",
      ${milliseconds("s.expires_at")} as "expiresAt", s.half_signed_in as half,
      p.id as "personId", p.name, p.email, p.role, p.technician,
      exists (select from second_factors f where f.person_id = p.id and f.confirmed_at is not null) as "hasSecondFactor",
      p.ended_at is not null or (p.demo and not coalesce(h.demo, false)) as "isShutOut", coalesce(h.demo, false) as "isDemo"
    from sessions s join people p on p.id = s.person_id left join shop h on true where s.token = ${mark}`);
  return found;
}

const milliseconds = (instant: string) => sql.raw(`floor(extract(epoch from ${instant}) * 1000)::float8`);
