import { sql } from "drizzle-orm";
import { demoPassword, demoPeople } from "@/lib/people/demo-people";
import { normalPassword } from "@/lib/people/password-rules";
import { inTransaction } from "../../in-transaction";
import { insertPerson } from "./add-person";
import { hashPassword } from "./hash-password";

/** One person of each role, where the company is invented and nobody is here yet; otherwise nobody. */
export async function addDemoPeople(): Promise<boolean> {
  const passwordHash = await hashPassword(normalPassword(demoPassword));
  return await inTransaction(async (tx) => {
    await tx.rows(sql`lock table people in share row exclusive mode`);
    const [fits] = await tx.rows(sql`select 1 from shop where demo and not exists (select 1 from people)`);
    if (fits === undefined) return false;
    for (const person of demoPeople) await insertPerson(tx, { ...person, demo: true, passwordHash });
    return true;
  });
}
