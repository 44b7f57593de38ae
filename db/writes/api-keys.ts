import { createHash, randomBytes } from "node:crypto";
import { sql } from "drizzle-orm";
import { inTransaction } from "../in-transaction";
import { apiKeys } from "../schema/programs";

const prefix = "ohm_";

/** Makes a key for a program that sends jobs. The key itself is given out this once; only its hash is kept. */
export async function makeApiKey(name: string): Promise<{ readonly keyId: number; readonly key: string }> {
  if (name.trim() === "") throw new RangeError("name: is blank");
  const key = `${prefix}${randomBytes(32).toString("base64url")}`;
  return await inTransaction(async (tx) => {
    const [made] = await tx
      .insert(apiKeys)
      .values({ name: name.trim(), scope: "jobs", keySha256: hashOf(key), createdAt: new Date().toISOString() })
      .returning({ keyId: apiKeys.keyId });
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

/** Which key this is, noting that it was used; undefined for one that was never given out or has ended. */
export async function recogniseApiKey(
  key: string,
): Promise<{ readonly keyId: number; readonly name: string; readonly scope: "jobs" } | undefined> {
  return await inTransaction(async (tx) => {
    const [found] = await tx.rows<{ keyId: number; name: string; scope: "jobs" }>(sql`
      update api_keys set last_used_at = now() where key_sha256 = ${hashOf(key)} and revoked_at is null
      returning key_id as "keyId", name, scope`);
    return found;
  });
}

/** A key has as much chance in it as its hash, so that a plain hash cannot be guessed back. */
function hashOf(key: string): string {
  return createHash("sha256").update(key).digest("hex");
}
