import { sql } from "drizzle-orm";
import { normalPassword } from "@/lib/people/password-rules";
import { readOnly } from "../../client";
import { inTransaction } from "../../in-transaction";
import { hashPassword, passwordMatches } from "./hash-password";

interface Change {
  readonly current: string;
  readonly password: string;
  readonly keepSession: string;
}

/** @returns false where `current` is not the password, and then nothing was changed */
export async function changePasswordOf(personId: string, { current, password, keepSession }: Change): Promise<boolean> {
  const [stored] = await readOnly((db) =>
    db.rows<{ password: string }>(
      sql`select password from credentials where person_id = ${personId} and provider_id = 'credential'`,
    ),
  );
  if (stored === undefined || !(await passwordMatches(normalPassword(current), stored.password))) return false;
  const made = await hashPassword(normalPassword(password));
  return await inTransaction(async (tx) => {
    const changed = await tx.rows(sql`
      update credentials set password = ${made}, updated_at = now()
      where person_id = ${personId} and password = ${stored.password} returning id`);
    await tx.rows(sql`delete from sessions where person_id = ${personId} and id <> ${keepSession}`);
    return changed.length > 0;
  });
}
