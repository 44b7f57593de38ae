import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import { dayFromNumber } from "@/lib/calendar/day-number";
import type { RunSignal, SignalRun } from "@/lib/signals/signal-run";
import { firstDayOf } from "@/lib/signals/weeks";
import { inTransaction } from "../../in-transaction";

export interface RunToStore {
  readonly asOf: Day;
  readonly basis: string;
  readonly run: SignalRun;
}

/** Keeps what was computed as of a week; another run of the same week takes its place, whole. */
export async function storeRun({ asOf, basis, run }: RunToStore): Promise<void> {
  await inTransaction(async (tx) => {
    const followed =
      run.kind === "followed" ? run : { cells: 0, stories: 0, byLuck: 0, funnel: undefined, signals: [] };
    const funnel = followed.funnel === undefined ? null : JSON.stringify(followed.funnel);
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
