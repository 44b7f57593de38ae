import { sql } from "drizzle-orm";
import type { SignInOutcome } from "@/lib/people/sign-in-outcome";
import { inTransaction } from "../../in-transaction";

interface Noted {
  /** As it was typed; only whose it is is kept, and nothing where it is nobody's. */
  readonly email: string;
  readonly outcome: SignInOutcome;
  /** Address of the network. */
  readonly cameFrom: string;
  readonly knownDevice: boolean;
}

/**
 * One line in the list of who signed in. Known and unknown addresses take the same work. Who goes on trying while they are
 * held back gets one line a minute, so that nobody can fill the disk with them.
 */
export async function noteSignIn({ email, outcome, cameFrom, knownDevice }: Noted): Promise<void> {
  await inTransaction(async (tx) => {
    await tx.rows(sql`
      insert into sign_ins (person_id, outcome, came_from, known_device)
      select (select id from people where email = lower(btrim(${email}))), ${outcome}, ${cameFrom.slice(0, 100)}, ${knownDevice}
      where ${outcome} <> 'held back' or not exists (
        select from sign_ins where outcome = 'held back' and came_from = ${cameFrom.slice(0, 100)} and at > now() - interval '1 minute')`);
  });
}
