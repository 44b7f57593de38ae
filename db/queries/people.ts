import { sql } from "drizzle-orm";
import type { Role } from "@/lib/people/role";
import type { Reader } from "../database-types";

export interface Person {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly technician: string | undefined;
  readonly demo: boolean;
  readonly hasSecondFactor: boolean;
  readonly endedAt: string | undefined;
  /** Of the latest session; undefined where there is none now. */
  readonly seenAt: string | undefined;
}

/** Everybody who was ever let in, those who still are first. */
export async function loadPeople(db: Reader): Promise<readonly Person[]> {
  const rows = await db.rows<Row>(sql`${personRows} order by p.ended_at is not null, lower(p.name), p.id`);
  return rows.map(personOf);
}

export async function loadPerson(db: Reader, id: string): Promise<Person | undefined> {
  const [row] = await db.rows<Row>(sql`${personRows} where p.id = ${id}`);
  return row && personOf(row);
}

/** Whether anybody was ever let in: until then the first who comes makes the owner. */
export async function loadWhetherAnybody(db: Reader): Promise<boolean> {
  const [row] = await db.rows<{ some: boolean }>(sql`select exists (select 1 from people) as some`);
  return row?.some ?? false;
}

const personRows = sql`
  select p.id, p.name, p.email, p.role, p.technician, p.demo, p.ended_at::text as "endedAt",
    exists (select 1 from second_factors f where f.person_id = p.id and f.confirmed_at is not null) as "hasSecondFactor",
    (select max(s.seen_at)::text from sessions s where s.person_id = p.id and s.expires_at > now()) as "seenAt"
  from people p`;

type Row = Omit<Person, "technician" | "endedAt" | "seenAt"> & {
  readonly technician: string | null;
  readonly endedAt: string | null;
  readonly seenAt: string | null;
};

function personOf({ technician, endedAt, seenAt, ...row }: Row): Person {
  return { ...row, technician: technician ?? undefined, endedAt: endedAt ?? undefined, seenAt: seenAt ?? undefined };
}
