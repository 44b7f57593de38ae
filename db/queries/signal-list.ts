import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { ProductType } from "@/lib/domain/product-type";
import type { CellFunnel } from "@/lib/signals/cell-funnel";
import type { SignalMark } from "@/lib/signals/signal-marks";
import type { WordKind } from "@/lib/signals/signal-record";
import type { LeadCell, RunSignal } from "@/lib/signals/signal-run";
import type { Reader } from "../database-types";

export interface StoredRun {
  readonly asOf: Day;
  readonly basis: string;
  readonly outcome: "followed" | "too-short" | "no-units";
  readonly weeks: number | undefined;
  readonly cells: number;
  readonly stories: number;
  readonly byLuck: number;
  /** Undefined in runs from before it was kept. */
  readonly funnel: CellFunnel | undefined;
}

export interface StoredSignal {
  readonly key: string;
  readonly wordKind: WordKind;
  readonly word: string;
  readonly wordName: string;
  readonly productType: ProductType;
  readonly maker: string;
  readonly onsetOn: Day;
  readonly observed: number;
  readonly expected: number;
  readonly chance: number;
  readonly adjusted: number;
  readonly lead: LeadCell;
  readonly within: RunSignal["within"];
  readonly symptoms: readonly string[];
  readonly marks: readonly StoredMark[];
}

export interface StoredMark extends Omit<SignalMark, "asOfWeek"> {
  readonly asOf: Day;
  readonly reason: string;
  readonly by: string;
  readonly at: string;
}

/** The last run that is as of a day or earlier. */
export async function loadRun(db: Reader, on: Day): Promise<StoredRun | undefined> {
  const [row] = await db.rows<
    Omit<StoredRun, "weeks" | "funnel"> & { weeks: number | null; funnel: CellFunnel | null }
  >(sql`
    select as_of as "asOf", basis, outcome, weeks, cells, stories, by_luck as "byLuck", funnel from signal_runs
    where as_of <= ${on} order by as_of desc limit 1`);
  return row && { ...row, weeks: row.weeks ?? undefined, funnel: row.funnel ?? undefined };
}

/** All signals of a run, the least luck first, with what was said of each by the end of a day. */
export async function loadSignals(
  db: Reader,
  asOf: Day,
  saidUntil: string | undefined,
  key?: string,
): Promise<StoredSignal[]> {
  const only = key === undefined ? sql`true` : sql`s.signal_key = ${key}`;
  const rows = await db.rows<Omit<StoredSignal, "marks">>(sql`
    select s.signal_key as key, s.word_kind as "wordKind", s.word, case when s.word_kind = 'fault_code' then 'Fault code ' || s.word
        else coalesce(c.name, y.name, s.word) end as "wordName",
      s.product_type as "productType", s.maker, s.onset_on as "onsetOn", s.observed, s.expected, s.chance, s.adjusted,
      s.lead, s.within, s.symptoms
    from found_signals s left join components c on s.word_kind = 'component' and c.key = s.word
    left join symptoms y on s.word_kind = 'symptom' and y.key = s.word
    where s.as_of = ${asOf} and ${only} order by s.chance, s.signal_key`);
  const marks = await loadMarks(db, saidUntil);
  return rows.map((row) => ({ ...row, marks: marks.get(row.key) ?? [] }));
}

async function loadMarks(db: Reader, until: string | undefined): Promise<Map<string, StoredMark[]>> {
  const rows = await db.rows<Omit<StoredMark, "undoes"> & { key: string; undoes: number | null }>(sql`
    select mark_id::int as "markId", signal_key as key, kind, undoes::int, reason, by, at::text, as_of as "asOf", observed, expected
    from signal_marks where ${until ?? null}::text is null or at <= ${until ?? null}::timestamptz order by mark_id`);
  const byKey = new Map<string, StoredMark[]>();
  for (const { key, undoes, ...mark } of rows) {
    byKey.set(key, [...(byKey.get(key) ?? []), { ...mark, undoes: undoes ?? undefined }]);
  }
  return byKey;
}

/** Units that carry exposure: how much work a run is. */
export async function countPlacedUnits(db: Reader): Promise<number> {
  const [row] = await db.rows<{ units: number }>(sql`select coalesce(sum(units), 0)::int as units from unit_windows`);
  return row?.units ?? 0;
}
