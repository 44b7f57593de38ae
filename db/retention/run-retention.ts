import { sql } from "drizzle-orm";
import { readOnly } from "../client";
import type { Reader } from "../database-types";
import { inTransaction } from "../in-transaction";
import { retentionLimits } from "../schema/keeping";
import { type RetentionRule, retentionRules } from "./retention-rules";

/** One kind of thing, how long it is kept, and how much of it is over that. */
export interface Due {
  readonly kind: string;
  readonly what: string;
  /** Undefined: kept for good. */
  readonly days: number | undefined;
  readonly rows: number;
  readonly bytes: number;
}

const timeoutSeconds = 3600;

/** What would be removed at this instant, and nothing is. */
export async function previewRetention(now: Date): Promise<readonly Due[]> {
  return await readOnly(
    async (db) => {
      const limits = await loadLimits(db);
      const due: Due[] = [];
      for (const rule of retentionRules) due.push(await dueUnder(db, rule, limits.get(rule.kind), now));
      return due;
    },
    { timeoutSeconds },
  );
}

/** Removes what is over its time: each kind in a transaction of its own, so that a large one does not hold up the others. */
export async function removeWhatIsDue(now: Date): Promise<readonly Due[]> {
  const removed: Due[] = [];
  for (const rule of retentionRules) {
    removed.push(
      await inTransaction(
        async (tx) => {
          const due = await dueUnder(tx, rule, (await loadLimits(tx)).get(rule.kind), now);
          if (due.days === undefined || due.rows === 0) return { ...due, rows: 0, bytes: 0 };
          const gone = await tx.rows(rule.remove(cutoff(now, due.days)));
          return { ...due, rows: gone.length };
        },
        { timeoutSeconds },
      ),
    );
  }
  return removed;
}

/** Sets how long a kind is kept; null keeps it for good. @throws RangeError for a kind, number or name that cannot be */
export async function setRetention(
  kind: string,
  days: number | null,
  { by, now }: { readonly by: string; readonly now: Date },
) {
  if (!retentionRules.some((rule) => rule.kind === kind)) {
    throw new RangeError(
      `kind: there is no “${kind}”; there are: ${retentionRules.map((rule) => rule.kind).join(", ")}`,
    );
  }
  if (days !== null && !(Number.isInteger(days) && days >= 1 && days <= 36_500)) {
    throw new RangeError(`days: a whole number from 1 to 36500 is wanted, not ${days}`);
  }
  if (by.trim() === "") throw new RangeError("by: is blank");
  const set = { days, setBy: by, setAt: now.toISOString() };
  await inTransaction((tx) =>
    tx
      .insert(retentionLimits)
      .values({ kind, ...set })
      .onConflictDoUpdate({ target: retentionLimits.kind, set }),
  );
}

async function loadLimits(db: Reader): Promise<ReadonlyMap<string, number | null>> {
  const rows = await db.select().from(retentionLimits);
  return new Map(rows.map(({ kind, days }) => [kind, days]));
}

async function dueUnder(db: Reader, rule: RetentionRule, set: number | null | undefined, now: Date): Promise<Due> {
  const { kind, what } = rule;
  const days = set === null ? undefined : (set ?? rule.usualDays);
  if (days === undefined) return { kind, what, days, rows: 0, bytes: 0 };
  const [sum] = await db.rows<{ rows: number; bytes: number }>(sql`
    select count(*)::double precision as rows, coalesce(sum(bytes), 0)::double precision as bytes from (${rule.due(cutoff(now, days))}) due`);
  return { kind, what, days, rows: sum?.rows ?? 0, bytes: sum?.bytes ?? 0 };
}

function cutoff(now: Date, days: number) {
  return sql`(${now.toISOString()}::timestamptz - make_interval(days => ${days}))`;
}
