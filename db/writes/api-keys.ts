import { createHash, randomBytes } from "node:crypto";
import { sql } from "drizzle-orm";
import type { KeyScope } from "@/lib/people/key-scope";
import { inTransaction } from "../in-transaction";

const prefix = "ohm_";

export interface NewKey {
  readonly name: string;
  readonly scope: KeyScope;
  /** Until it opens nothing any more; undefined where it has no end. */
  readonly days: number | undefined;
  readonly madeBy: string;
}

/** Makes a key for a program. The key itself is given out this once; only its hash is kept. */
export async function makeApiKey({
  name,
  scope,
  days,
  madeBy,
}: NewKey): Promise<{ readonly keyId: number; readonly key: string }> {
  if (name.trim() === "") throw new RangeError("name: is blank");
  if (days !== undefined && !(days > 0)) throw new RangeError(`days: ${days} is not above 0`);
  const key = `${prefix}${randomBytes(32).toString("base64url")}`;
  return await inTransaction(async (tx) => {
    const [made] = await tx.rows<{ keyId: number }>(sql`
      insert into api_keys (name, scope, key_sha256, made_by, created_at, expires_at)
      values (${name.trim()}, ${scope}, ${hashOf(key)}, ${madeBy}, now(), now() + ${days ?? null}::integer * interval '1 day')
      returning key_id as "keyId"`);
    if (made === undefined) throw new Error("The key was stored without a number.");
    return { keyId: made.keyId, key };
  });
}

/** Ends a key; false where there is none of that number, or it has ended before. */
export async function revokeApiKey(keyId: number): Promise<boolean> {
  return await inTransaction(async (tx) => {
    const ended = await tx.rows(
      sql`update api_keys set revoked_at = now() where key_id = ${keyId} and revoked_at is null returning key_id`,
    );
    return ended.length > 0;
  });
}

export interface KnownKey {
  readonly keyId: number;
  readonly name: string;
  readonly scope: KeyScope;
}

/** Which key this is, noting that it was used; undefined for one that was never given out, was ended, or has run out. */
export async function recogniseApiKey(key: string): Promise<KnownKey | undefined> {
  return await inTransaction(async (tx) => {
    const [found] = await tx.rows<KnownKey & Record<string, unknown>>(sql`
      update api_keys set last_used_at = now()
      where key_sha256 = ${hashOf(key)} and revoked_at is null and (expires_at is null or expires_at > now())
      returning key_id as "keyId", name, scope`);
    return found;
  });
}

/** A key has as much chance in it as its hash, so that a plain hash cannot be guessed back. */
function hashOf(key: string): string {
  return createHash("sha256").update(key).digest("hex");
}
