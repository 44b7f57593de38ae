import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";
import { restoreDrills } from "../schema/drills";

export interface RestoreDrill {
  readonly backupAt: string;
  readonly finishedAt: string;
  readonly rows: number;
  readonly problem: string | null;
}

export interface RestoreDrills {
  /** The newest trial, whatever it found. */
  readonly last: RestoreDrill | undefined;
  /** The newest in which everything came back. */
  readonly lastGood: RestoreDrill | undefined;
}

/** What is known of the backups. Instants as ISO text in UTC. */
export async function loadRestoreDrills(db: Reader): Promise<RestoreDrills> {
  const newest = async (where: ReturnType<typeof sql>) =>
    (
      await db.rows<RestoreDrill & Record<string, unknown>>(sql`
        select to_char(backup_at, 'YYYY-MM-DD"T"HH24:MI:SS"Z"') as "backupAt", to_char(finished_at, 'YYYY-MM-DD"T"HH24:MI:SS"Z"') as "finishedAt",
          rows::double precision as rows, problem
        from ${restoreDrills} where ${where} order by drill_id desc limit 1`)
    )[0];
  return { last: await newest(sql`true`), lastGood: await newest(sql`problem is null`) };
}
