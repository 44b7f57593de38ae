import { desc, sql } from "drizzle-orm";
import type { Reader } from "../database-types";
import { retentionRules } from "../retention/retention-rules";
import { erasures, retentionLimits } from "../schema/keeping";

export interface KeptFor {
  readonly kind: string;
  readonly what: string;
  /** Undefined: for good. */
  readonly days: number | undefined;
  /** Who said so; undefined where nobody did and the program's own time holds. */
  readonly setBy: string | undefined;
}

export interface ErasureLine {
  readonly erasureId: string;
  readonly at: string;
  readonly by: string;
  readonly reason: string;
  readonly jobs: number;
  readonly cells: number;
  readonly kept: number;
}

/** How long each kind of thing is kept, and who was forgotten when; never whom, which nothing here knows any more. */
export async function loadKeeping(
  db: Reader,
): Promise<{ readonly times: readonly KeptFor[]; readonly erasures: readonly ErasureLine[] }> {
  const set = new Map((await db.select().from(retentionLimits)).map((row) => [row.kind, row]));
  const times = retentionRules.map(({ kind, what, usualDays }) => {
    const own = set.get(kind);
    return { kind, what, days: own === undefined ? usualDays : (own.days ?? undefined), setBy: own?.setBy };
  });
  const rows = await db
    .select({
      erasureId: erasures.erasureId,
      at: erasures.at,
      by: erasures.by,
      reason: erasures.reason,
      jobs: sql<number>`jsonb_array_length(${erasures.jobs})`,
      cells: sql<number>`(select coalesce(sum((e ->> 'cells')::integer), 0)::integer from jsonb_array_elements(${erasures.erased}) e)`,
      kept: sql<number>`jsonb_array_length(${erasures.kept})`,
    })
    .from(erasures)
    .orderBy(desc(erasures.at));
  return { times, erasures: rows };
}
