import { statfs } from "node:fs/promises";
import { sql } from "drizzle-orm";
import { readOnly } from "@/db/client";
import journal from "@/db/migrations/meta/_journal.json";

export interface Readiness {
  readonly database: boolean;
  readonly schema: boolean;
  readonly disk: boolean;
}

/** Below this a load or a photo may find no room. Our own choice. */
export const leastFreeBytes = 200 * 1024 ** 2;

/** Whether the site can do its work: the database answers and has this program's schema, and the disk has room. */
export async function loadReadiness(): Promise<Readiness> {
  const [steps, free] = await Promise.all([stepsTaken(), freeBytes()]);
  return {
    database: steps !== undefined,
    schema: steps !== undefined && steps >= journal.entries.length,
    disk: free > leastFreeBytes,
  };
}

/** Bytes free where the site keeps its files. */
export async function freeBytes(): Promise<number> {
  const { bavail, bsize } = await statfs(process.cwd());
  return bavail * bsize;
}

/** How many steps of the schema the database has taken; undefined when it does not answer within two seconds. */
async function stepsTaken(): Promise<number | undefined> {
  try {
    return await readOnly(
      async (db) => {
        const [row] = await db.rows<{ steps: number }>(
          sql`select count(*)::integer as steps from drizzle.__drizzle_migrations`,
        );
        return row?.steps ?? 0;
      },
      { timeoutSeconds: 2 },
    );
  } catch {
    return undefined;
  }
}
