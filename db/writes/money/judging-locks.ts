// Who judges units, and who judges all of them, without keeping each other waiting for longer than the writing takes.
import { sql } from "drizzle-orm";
import type { Transaction } from "../../database-types";

// Any numbers will do as long as they never change.
/** Held alone by whoever judges all units, from before the first is read to the end. */
const judgingAll = 7_016_051;
/** Held in common by whoever stores what became of some units, alone by whoever stores it of all. */
const writing = 7_016_052;

/** For some units: waits while all are written, and for others who write one of these. */
export async function joinWriters(tx: Transaction, unitIds: readonly string[]): Promise<void> {
  await tx.rows(sql`select pg_advisory_xact_lock_shared(${writing})::text`);
  await tx.rows(sql`
    select pg_advisory_xact_lock(id)::text from (select unnest(${sql.param([...unitIds])}::bigint[]) as id order by 1) as each`);
}

/**
 * Whether somebody judges all units now. Where not, nobody begins to before this transaction has ended, and so all that
 * it changed is seen.
 */
export async function isAllBeingJudged(tx: Transaction): Promise<boolean> {
  const [found] = await tx.rows<{ free: boolean }>(sql`select pg_try_advisory_xact_lock_shared(${judgingAll}) as free`);
  return found?.free !== true;
}

/** For whoever has nothing else to do than to judge what is marked: until nobody judges all units, each would be marked again. */
export async function waitForJudgingAll(tx: Transaction): Promise<void> {
  await tx.rows(sql`select pg_advisory_xact_lock_shared(${judgingAll})::text`);
}

/** For all units: one at a time, and only after whoever is at some units has ended. */
export async function beginJudgingAll(tx: Transaction): Promise<void> {
  await tx.rows(sql`select pg_advisory_xact_lock(${judgingAll})::text`);
}

export async function beginWritingAll(tx: Transaction): Promise<void> {
  await tx.rows(sql`select pg_advisory_xact_lock(${writing})::text`);
}
