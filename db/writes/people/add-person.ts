import { randomUUID } from "node:crypto";
import { sql } from "drizzle-orm";
import { normalPassword } from "@/lib/people/password-rules";
import type { Role } from "@/lib/people/role";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { hashPassword } from "./hash-password";

export interface NewPerson {
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly technician?: string | undefined;
  readonly demo?: boolean;
  /** As `hashPassword` made it. */
  readonly passwordHash: string;
}

/** Makes the first person, who is the owner; false where somebody is here already, even at the same moment. */
export async function addFirstOwner(owner: {
  readonly name: string;
  readonly email: string;
  readonly password: string;
}): Promise<boolean> {
  const passwordHash = await hashPassword(normalPassword(owner.password));
  return await inTransaction(async (tx) => {
    await tx.rows(sql`lock table people in share row exclusive mode`);
    const [found] = await tx.rows(sql`select 1 from people limit 1`);
    if (found !== undefined) return false;
    await insertPerson(tx, { name: owner.name, email: owner.email, role: "owner", passwordHash });
    return true;
  });
}

/** @returns the person's id */
export async function insertPerson(tx: Transaction, person: NewPerson): Promise<string> {
  const id = randomUUID();
  const email = emailKey(person.email);
  await tx.rows(sql`
    insert into people (id, name, email, created_at, updated_at, role, technician, demo)
    values (${id}, ${person.name.trim()}, ${email}, now(), now(), ${person.role}, ${person.technician ?? null}, ${person.demo ?? false})`);
  await tx.rows(sql`
    insert into credentials (id, account_id, provider_id, person_id, password, created_at, updated_at)
    values (${randomUUID()}, ${id}, 'credential', ${id}, ${person.passwordHash}, now(), now())`);
  return id;
}

/** How an e-mail address is looked up: letters count alike, large or small. */
export function emailKey(email: string): string {
  return email.trim().toLowerCase();
}
