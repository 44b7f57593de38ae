import { createHash, randomBytes } from "node:crypto";
import { sql } from "drizzle-orm";
import { inTransaction } from "../../in-transaction";

const codesGiven = 10;
const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789"; // no letter that looks like a figure

/** Keeps the sealed secret of an authenticator that is still to show its first right code; nothing asks for it before. */
export async function beginSecondFactor(personId: string, sealedSecret: string): Promise<void> {
  await inTransaction(async (tx) => {
    await tx.rows(sql`
      insert into second_factors (person_id, sealed_secret, created_at) values (${personId}, ${sealedSecret}, now())
      on conflict (person_id) do update set sealed_secret = excluded.sealed_secret, created_at = excluded.created_at,
        confirmed_at = null, last_step = 0 where second_factors.confirmed_at is null`);
  });
}

/**
 * From now on the second factor is asked for. @returns recovery codes, given out this once; undefined where it was
 * confirmed meanwhile, or the code of this half-minute or a later one was taken before
 */
export async function confirmSecondFactor(personId: string, step: number): Promise<readonly string[] | undefined> {
  return await inTransaction(async (tx) => {
    const confirmed = await tx.rows(sql`
      update second_factors set confirmed_at = now(), last_step = ${step}
      where person_id = ${personId} and confirmed_at is null and last_step < ${step} returning person_id`);
    if (confirmed.length === 0) return undefined;
    const codes = Array.from({ length: codesGiven }, newCode);
    await tx.rows(sql`delete from recovery_codes where person_id = ${personId}`);
    for (const code of codes)
      await tx.rows(sql`insert into recovery_codes (person_id, code_sha256) values (${personId}, ${hashOfCode(code)})`);
    return codes;
  });
}

/** Takes the code of one half-minute, once; false where it or a later one was taken. */
export async function takeStep(personId: string, step: number): Promise<boolean> {
  return await inTransaction(async (tx) => {
    const taken = await tx.rows(sql`
      update second_factors set last_step = ${step}
      where person_id = ${personId} and confirmed_at is not null and last_step < ${step} returning person_id`);
    return taken.length > 0;
  });
}

/** Takes a recovery code, once; false for one that is none or was taken. */
export async function takeRecoveryCode(personId: string, code: string): Promise<boolean> {
  return await inTransaction(async (tx) => {
    const taken = await tx.rows(sql`
      update recovery_codes set used_at = now()
      where person_id = ${personId} and code_sha256 = ${hashOfCode(code)} and used_at is null returning person_id`);
    return taken.length > 0;
  });
}

export async function removeSecondFactor(personId: string): Promise<void> {
  await inTransaction(async (tx) => {
    await tx.rows(sql`delete from recovery_codes where person_id = ${personId}`);
    await tx.rows(sql`delete from second_factors where person_id = ${personId}`);
  });
}

/** Eighty bits in groups of four: as much chance as a stranger could never try, so that a plain hash cannot be guessed back. */
function newCode(): string {
  const code = Array.from(randomBytes(16), (byte) => letters[byte % letters.length] ?? "").join("");
  return code.replaceAll(/(.{4})(?=.)/g, "$1-");
}

function hashOfCode(code: string): string {
  return createHash("sha256")
    .update(code.toUpperCase().replaceAll(/[^A-Z0-9]/g, ""))
    .digest("hex");
}
