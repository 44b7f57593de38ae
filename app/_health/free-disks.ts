import { statfs } from "node:fs/promises";
import { sql } from "drizzle-orm";
import { readOnly } from "@/db/client";
import { databaseUrl } from "@/db/connection";

export interface FreeDisks {
  /** Where the site keeps files on their way in. */
  readonly siteBytes: number;
  /** Where the database keeps its own; undefined where that is another computer, or it does not say. */
  readonly databaseBytes: number | undefined;
}

export async function freeDisks(): Promise<FreeDisks> {
  const [siteBytes, databaseBytes] = await Promise.all([freeIn(process.cwd()), freeOfDatabase()]);
  return { siteBytes, databaseBytes };
}

/** A server that is reached through a socket is on this computer, and only then does its folder name one here. */
async function freeOfDatabase(): Promise<number | undefined> {
  try {
    if (!isReachedBySocket(await databaseUrl())) return undefined;
    const folder = await readOnly(
      async (db) => (await db.rows<{ folder: string }>(sql`select data_folder() as folder`))[0]?.folder,
      { timeoutSeconds: 2 },
    );
    return folder === undefined ? undefined : await freeIn(folder);
  } catch {
    return undefined; // it does not answer, or does not tell this login
  }
}

export function isReachedBySocket(url: string): boolean {
  const { hostname, searchParams } = new URL(url);
  return (searchParams.get("host") ?? decodeURIComponent(hostname)).startsWith("/");
}

async function freeIn(folder: string): Promise<number> {
  const { bavail, bsize } = await statfs(folder);
  return bavail * bsize;
}
