import { sql } from "drizzle-orm";
import { readOnly } from "@/db/client";
import journal from "@/db/migrations/meta/_journal.json";
import { type FreeDisks, freeDisks } from "./free-disks";

export interface Readiness {
  readonly database: boolean;
  readonly schema: boolean;
  /** Room where the site keeps its files, and where the database keeps its own if that is on this computer. */
  readonly disk: boolean;
}

/** Below this a load or a photo may find no room. Our own choice. */
export const leastFreeBytes = 200 * 1024 ** 2;

/** Whether the site can do its work: the database answers and has this program's schema, and the disk has room. */
export async function loadReadiness(): Promise<Readiness> {
  const [steps, disks] = await Promise.all([stepsTaken(), freeDisks()]);
  return {
    database: steps !== undefined,
    schema: steps !== undefined && steps >= journal.entries.length,
    disk: hasRoom(disks),
  };
}

export function hasRoom({ siteBytes, databaseBytes }: FreeDisks): boolean {
  return siteBytes > leastFreeBytes && (databaseBytes === undefined || databaseBytes > leastFreeBytes);
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
