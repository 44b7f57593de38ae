import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import { dayFromNumber, dayNumber } from "@/lib/calendar/day-number";
import type { RunSignal, SignalRun } from "@/lib/signals/signal-run";
import { firstDayOf } from "@/lib/signals/weeks";
import { inTransaction } from "../../in-transaction";

export interface RunToStore {
  readonly asOf: Day;
  readonly basis: string;
  readonly run: SignalRun;
}

/** Any number will do as long as it never changes: with a week it names the lock on what is kept of it. */
const runLocks = 7_016_090;

/** Keeps what was computed as of a week; another run of the same week takes its place, whole. */
export async function storeRun({ asOf, basis, run }: RunToStore): Promise<void> {
  await inTransaction(async (tx) => {
    const followed =
      run.kind === "followed" ? run : { cells: 0, stories: 0, byLuck: 0, funnel: undefined, signals: [] };
    const funnel = followed.funnel === undefined ? null : JSON.stringify(followed.funnel);
    // Two that begin at once would each find nothing to take away, and the second could not put its own beside the first's.
    await tx.rows(sql`select pg_advisory_xact_lock(${runLocks}, ${dayNumber(asOf)})::text`);
    await tx.execute(sql`delete from signal_runs where as_of = ${asOf}`);
    await tx.execute(sql`
      insert into signal_runs (as_of, basis, computed_at, outcome, weeks, cells, stories, by_luck, funnel)
      values (${asOf}, ${basis}, now(), ${run.kind}, ${run.kind === "too-short" ? run.weeks : null}, ${followed.cells}, ${followed.stories}, ${followed.byLuck}, ${funnel}::jsonb)`);
    for (const signal of followed.signals) await tx.execute(insertOf(asOf, signal));
  });
}

function insertOf(asOf: Day, { key, word, wordKind, lead, chance, adjusted, within, symptoms }: RunSignal) {
  const { productType, maker } = lead.key;
  return sql`
    insert into found_signals (as_of, signal_key, word_kind, word, product_type, maker, onset_on, observed, expected, chance, adjusted, lead, within, symptoms)
    values (${asOf}, ${key}, ${wordKind}, ${word}, ${productType}, ${maker}, ${dayFromNumber(firstDayOf(lead.onsetWeek))},
      ${lead.observed}, ${lead.expected}, ${chance}, ${adjusted}, ${JSON.stringify(lead)}::jsonb, ${JSON.stringify(within)}::jsonb, ${JSON.stringify(symptoms)}::jsonb)`;
}
