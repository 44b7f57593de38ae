import { sql } from "drizzle-orm";
import type { Role } from "@/lib/people/role";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";

export type Changed = "changed" | "last owner" | "no such person";

/** Gives somebody another role. Their sessions end: what they may do is never older than their last signing in. */
export async function changeRole(
  personId: string,
  to: { readonly role: Role; readonly technician: string | undefined },
): Promise<Changed> {
  return await changePerson(personId, to.role !== "owner", (tx) =>
    tx.rows(sql`
      update people set role = ${to.role}, technician = ${to.technician ?? null}, updated_at = now()
      where id = ${personId} and ended_at is null returning id`),
  );
}

/** Takes somebody off. What they did keeps their name; a link can let them in again. */
export async function endPerson(personId: string): Promise<Changed> {
  return await changePerson(personId, true, (tx) =>
    tx.rows(
      sql`update people set ended_at = now(), updated_at = now() where id = ${personId} and ended_at is null returning id`,
    ),
  );
}

/** An owner is always left: the others are locked while it is seen to, so that two cannot take each other off. */
async function changePerson(
  personId: string,
  losesOwner: boolean,
  change: (tx: Transaction) => Promise<readonly unknown[]>,
): Promise<Changed> {
  return await inTransaction(async (tx) => {
    const owners = await tx.rows<{ id: string }>(
      sql`select id from people where role = 'owner' and ended_at is null order by id for update`,
    );
    if (losesOwner && owners.length === 1 && owners[0]?.id === personId) return "last owner";
    const changed = await change(tx);
    if (changed.length === 0) return "no such person";
    await tx.rows(sql`delete from sessions where person_id = ${personId}`);
    return "changed";
  });
}
