import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";

export interface StoredFactor {
  readonly sealedSecret: string;
  readonly isConfirmed: boolean;
  readonly lastStep: number;
  readonly recoveryCodesLeft: number;
}

/** The second factor of a person, whether it is already asked for or still waits for its first code. */
export async function loadSecondFactor(db: Reader, personId: string): Promise<StoredFactor | undefined> {
  const [row] = await db.rows<StoredFactor & Record<string, unknown>>(sql`
    select sealed_secret as "sealedSecret", confirmed_at is not null as "isConfirmed", last_step as "lastStep",
      (select count(*)::int from recovery_codes c where c.person_id = f.person_id and c.used_at is null) as "recoveryCodesLeft"
    from second_factors f where person_id = ${personId}`);
  return row;
}
