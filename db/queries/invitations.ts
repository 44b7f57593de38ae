import { createHash } from "node:crypto";
import { sql } from "drizzle-orm";
import type { Role } from "@/lib/people/role";
import type { Reader } from "../database-types";

export interface Invitation {
  readonly invitationId: number;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly technician: string | null;
  /** Set where it gives a person who is here already a new password. */
  readonly personId: string | null;
  readonly madeBy: string;
  readonly createdAt: string;
  readonly expiresAt: string;
}

/** Links that still open, the latest first; never the links themselves. */
export async function loadOpenInvitations(db: Reader): Promise<readonly Invitation[]> {
  return await db.rows<Invitation & Record<string, unknown>>(sql`${open} order by invitation_id desc`);
}

/** What a link opens; undefined for one that was never made, was used, was ended, or is too old. */
export async function findInvitation(db: Reader, token: string): Promise<Invitation | undefined> {
  const [found] = await db.rows<Invitation & Record<string, unknown>>(
    sql`${open} and token_sha256 = ${hashOfToken(token)}`,
  );
  return found;
}

/** A token has as much chance in it as its hash, so that a plain hash cannot be guessed back. */
export function hashOfToken(token: string): string {
  return createHash("sha256").update(token).digest("hex");
}

const open = sql`
  select invitation_id as "invitationId", name, email, role, technician, person_id as "personId", made_by as "madeBy",
    created_at::text as "createdAt", expires_at::text as "expiresAt"
  from invitations where used_at is null and ended_at is null and expires_at > now()`;
