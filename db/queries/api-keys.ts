import { desc } from "drizzle-orm";
import type { Reader } from "../database-types";
import { apiKeys } from "../schema/programs";

export interface ApiKey {
  readonly keyId: number;
  readonly name: string;
  readonly scope: "jobs";
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
      createdAt: apiKeys.createdAt,
      lastUsedAt: apiKeys.lastUsedAt,
      revokedAt: apiKeys.revokedAt,
    })
    .from(apiKeys)
    .orderBy(desc(apiKeys.keyId));
}
