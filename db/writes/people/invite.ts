import { randomBytes } from "node:crypto";
import { sql } from "drizzle-orm";
import type { Role } from "@/lib/people/role";
import { inTransaction } from "../../in-transaction";
import { hashOfToken } from "../../queries/invitations";
import { emailKey } from "./add-person";

export interface NewInvitation {
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly technician: string | undefined;
  readonly madeBy: string;
}

export type Invited =
  | { readonly kind: "made"; readonly token: string }
  | { readonly kind: "here already" }
  | { readonly kind: "no such person" };

const daysToUse = 7;

/** Makes the link for a new person. It is given out this once; an earlier link for the same address is ended. */
export async function invite({ name, email, role, technician, madeBy }: NewInvitation): Promise<Invited> {
  const key = emailKey(email);
  const token = newToken();
  return await inTransaction(async (tx) => {
    const [here] = await tx.rows(sql`select 1 from people where email = ${key}`);
    if (here !== undefined) return { kind: "here already" };
    await tx.rows(endOthers(key));
    await tx.rows(sql`
      insert into invitations (token_sha256, email, name, role, technician, made_by, created_at, expires_at)
      values (${hashOfToken(token)}, ${key}, ${name.trim()}, ${role}, ${technician ?? null}, ${madeBy}, now(), now() + ${daysToUse} * interval '1 day')`);
    return { kind: "made", token };
  });
}

/** Makes a link by which somebody who is here sets a new password, or comes back after having been taken off. */
export async function inviteToNewPassword(personId: string, madeBy: string): Promise<Invited> {
  const token = newToken();
  return await inTransaction(async (tx) => {
    const [person] = await tx.rows<{ email: string; name: string; role: Role; technician: string | null }>(
      sql`select email, name, role, technician from people where id = ${personId}`,
    );
    if (person === undefined) return { kind: "no such person" };
    await tx.rows(endOthers(person.email));
    await tx.rows(sql`
      insert into invitations (token_sha256, email, name, role, technician, person_id, made_by, created_at, expires_at)
      values (${hashOfToken(token)}, ${person.email}, ${person.name}, ${person.role}, ${person.technician}, ${personId}, ${madeBy},
        now(), now() + ${daysToUse} * interval '1 day')`);
    return { kind: "made", token };
  });
}

export async function endInvitation(invitationId: number): Promise<void> {
  await inTransaction(async (tx) => {
    await tx.rows(
      sql`update invitations set ended_at = now() where invitation_id = ${invitationId} and used_at is null and ended_at is null`,
    );
  });
}

const endOthers = (email: string) =>
  sql`update invitations set ended_at = now() where email = ${email} and used_at is null and ended_at is null`;

function newToken(): string {
  return randomBytes(32).toString("base64url");
}
