import { desc } from "drizzle-orm";
import type { KeyScope } from "@/lib/people/key-scope";
import type { Reader } from "../database-types";
import { apiKeys } from "../schema/programs";

export interface ApiKey {
  readonly keyId: number;
  readonly name: string;
  readonly scope: KeyScope;
  readonly madeBy: string;
  readonly expiresAt: string | null;
  readonly createdAt: string;
  readonly lastUsedAt: string | null;
  readonly revokedAt: string | null;
}

/** All keys that were given out, the latest first; never the keys themselves. */
export async function loadApiKeys(db: Reader): Promise<readonly ApiKey[]> {
  return await db
    .select({
      keyId: apiKeys.keyId,
      name: apiKeys.name,
      scope: apiKeys.scope,
      madeBy: apiKeys.madeBy,
      expiresAt: apiKeys.expiresAt,
      createdAt: apiKeys.createdAt,
      lastUsedAt: apiKeys.lastUsedAt,
      revokedAt: apiKeys.revokedAt,
    })
    .from(apiKeys)
    .orderBy(desc(apiKeys.keyId));
}
