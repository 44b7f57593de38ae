import { sql } from "drizzle-orm";
import type { SignInOutcome } from "@/lib/people/sign-in-outcome";
import type { Reader } from "../database-types";

export interface SignIn {
  readonly id: string;
  readonly at: string;
  /** Undefined where the address that was typed is nobody's here. */
  readonly name: string | undefined;
  readonly outcome: SignInOutcome;
  readonly cameFrom: string;
  readonly knownDevice: boolean;
}

export interface SignInList {
  readonly rows: readonly SignIn[];
  /** Of the last 30 days. */
  readonly failed: number;
  readonly total: number;
}

/** The latest tries to sign in, and how many of the last 30 days failed. */
export async function loadSignIns(db: Reader, most: number): Promise<SignInList> {
  const rows = await db.rows<Omit<SignIn, "name"> & { readonly name: string | null }>(sql`
    select s.sign_in_id::text as id, s.at::text as at, p.name, s.outcome, s.came_from as "cameFrom", s.known_device as "knownDevice"
    from sign_ins s left join people p on p.id = s.person_id order by s.at desc, s.sign_in_id desc limit ${most}`);
  const [count] = await db.rows<{ failed: number; total: number }>(sql`
    select count(*) filter (where outcome in ('no match', 'wrong code', 'held back'))::integer as failed, count(*)::integer as total
    from sign_ins where at > now() - interval '30 days'`);
  return {
    rows: rows.map(({ name, ...row }) => ({ ...row, name: name ?? undefined })),
    failed: count?.failed ?? 0,
    total: count?.total ?? 0,
  };
}
