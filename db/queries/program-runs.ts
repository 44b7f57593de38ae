import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";
import type { RunOf } from "../writes/note-run";

export interface ProgramRun {
  readonly program: RunOf;
  /** Instant, ISO text in UTC. */
  readonly finishedAt: string;
  readonly found: number;
  readonly first: readonly string[];
  readonly problem: string | null;
}

/** The last run of each of the program's own checks. */
export async function loadLastRuns(db: Reader): Promise<readonly ProgramRun[]> {
  return await db.rows<ProgramRun & Record<string, unknown>>(sql`
    select distinct on (program) program, to_char(finished_at, 'YYYY-MM-DD"T"HH24:MI:SS"Z"') as "finishedAt",
      found::double precision as found, first, problem
    from program_runs order by program, run_id desc`);
}

/** What runs every night, in this order. */
export const nightlyPrograms = ["check-log", "check-evidence", "retention"] as const satisfies readonly RunOf[];

/** When the one of the nightly programs that ran longest ago came to its end; undefined where one never ran. */
export function lastNightly(runs: readonly ProgramRun[]): string | undefined {
  const ends = nightlyPrograms.map((name) => runs.find(({ program }) => program === name)?.finishedAt);
  return ends.includes(undefined) ? undefined : ends.filter((end) => end !== undefined).toSorted()[0];
}
