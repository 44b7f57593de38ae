import { sql } from "drizzle-orm";
import { normalPassword } from "@/lib/people/password-rules";
import type { Role } from "@/lib/people/role";
import { inTransaction } from "../../in-transaction";
import { hashOfToken } from "../../queries/invitations";
import { insertPerson } from "./add-person";
import { hashPassword } from "./hash-password";
import { forgetTriesOfAccount } from "./sign-in-tries";

/**
 * Uses a link, once: makes the person that it was meant for, or gives one who is here a new password and ends all of
 * their sessions. @returns the e-mail address to sign in with; undefined where the link no longer opens
 */
export async function acceptInvitation(token: string, password: string): Promise<string | undefined> {
  const passwordHash = await hashPassword(normalPassword(password));
  return await inTransaction(async (tx) => {
    const [used] = await tx.rows<Used>(sql`
      update invitations set used_at = now()
      where token_sha256 = ${hashOfToken(token)} and used_at is null and ended_at is null and expires_at > now()
      returning email, name, role, technician, person_id as "personId"`);
    if (used === undefined) return undefined;
    await forgetTriesOfAccount(tx, used.email);
    if (used.personId === null) {
      await insertPerson(tx, { ...used, technician: used.technician ?? undefined, passwordHash });
      return used.email;
    }
    await tx.rows(sql`update people set ended_at = null, updated_at = now() where id = ${used.personId}`);
    await tx.rows(sql`
      update credentials set password = ${passwordHash}, updated_at = now() where person_id = ${used.personId} and provider_id = 'credential'`);
    await tx.rows(sql`delete from sessions where person_id = ${used.personId}`);
    return used.email;
  });
}

type Used = {
  readonly email: string;
  readonly name: string;
  readonly role: Role;
  readonly technician: string | null;
  readonly personId: string | null;
};
