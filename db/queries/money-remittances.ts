import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { RefusalReason } from "@/lib/claims/life/refusal-reason";
import type { LineFate } from "@/lib/claims/remittance/line-fate";
import type { ClaimShare, RemittanceMatch } from "@/lib/claims/remittance/remittance-line";
import type { Currency } from "@/lib/domain/money";
import type { RemittanceColumns } from "@/lib/intake/remittances/remittance-columns";
import type { Reader } from "../database-types";

export interface RemittanceSummary {
  readonly remittanceId: number;
  readonly fileName: string;
  readonly payer: string;
  readonly reference: string;
  readonly paidOn: Day;
  readonly currency: Currency;
  /** Lines by fate; none before the columns are confirmed. */
  readonly lines: Readonly<Partial<Record<LineFate, number>>>;
  readonly postedCents: number;
  readonly isConfirmed: boolean;
  readonly undoneBy: string | undefined;
}

export interface RemittanceFull extends RemittanceSummary {
  readonly header: readonly string[];
  readonly columns: RemittanceColumns;
  readonly version: number;
  readonly rows: readonly RemittanceLineRow[];
}

export interface RemittanceLineRow {
  readonly row: number;
  readonly cells: readonly string[];
  readonly fate: LineFate;
  readonly paidCents: number | undefined;
  readonly currency: Currency | undefined;
  readonly payerText: string;
  readonly reason: RefusalReason | undefined;
  readonly match: RemittanceMatch | undefined;
  readonly shares: readonly ClaimShare[];
  readonly sentence: string;
}

export interface RemittanceFilter {
  readonly payer?: string | undefined;
  /** In the name of the file, the number of the payment, or anywhere in a line. */
  readonly words?: string | undefined;
}

/** Lists, the latest payment first. */
export async function loadRemittances(
  db: Reader,
  { payer, words }: RemittanceFilter = {},
): Promise<RemittanceSummary[]> {
  const looked = `%${(words ?? "").replaceAll(/[\\%_]/g, "\\$&")}%`;
  const rows = await db.rows<SummaryRow>(sql`${summaries}
    where ${payer === undefined ? sql`true` : sql`r.payer = ${payer}`} ${
      words === undefined
        ? sql``
        : sql`and (r.file_name ilike ${looked} or r.reference ilike ${looked} or exists (select from remittance_lines l
      where l.remittance_id = r.remittance_id and (l.cells::text ilike ${looked} or l.shares::text ilike ${looked} or l.payer_text ilike ${looked})))`
    }
    order by r.paid_on desc, r.remittance_id desc limit 200`);
  return rows.map(summary);
}

/** Other lists of the same payer that stand and name the same payment: one of them may have come twice. */
export async function loadSamePayment(
  db: Reader,
  { remittanceId, payer, reference }: Pick<RemittanceSummary, "remittanceId" | "payer" | "reference">,
): Promise<readonly Pick<RemittanceSummary, "remittanceId" | "fileName">[]> {
  return await db.rows<{ remittanceId: number; fileName: string }>(sql`
    select remittance_id as "remittanceId", file_name as "fileName" from remittances
    where payer = ${payer} and lower(reference) = lower(${reference}) and remittance_id <> ${remittanceId} and undone_at is null order by 1`);
}

export async function loadRemittance(db: Reader, remittanceId: number): Promise<RemittanceFull | undefined> {
  const [row] = await db.rows<SummaryRow>(sql`${summaries} where r.remittance_id = ${remittanceId}`);
  if (row === undefined) return undefined;
  const lines = await db.rows<LineRow>(sql`
    select row, cells, fate, paid_cents::text, currency, payer_text, reason, match, shares, sentence from remittance_lines
    where remittance_id = ${remittanceId} order by row`);
  const { header, columns, version } = row;
  return { ...summary(row), header, columns, version, rows: lines.map(lineRow) };
}

const summaries = sql`
  select r.remittance_id, r.file_name, r.payer, r.reference, r.paid_on::text, r.currency, r.header, r.columns, r.version,
    r.columns_confirmed_by is not null as confirmed, r.undone_by,
    coalesce((select jsonb_object_agg(fate, lines) from (select fate, count(*)::int as lines from remittance_lines l where l.remittance_id = r.remittance_id group by fate) f), '{}') as lines,
    (select coalesce(sum(paid_cents), 0)::text from remittance_lines l where l.remittance_id = r.remittance_id and l.fate = 'posted') as posted_cents
  from remittances r`;

type SummaryRow = {
  remittance_id: number;
  file_name: string;
  payer: string;
  reference: string;
  paid_on: Day;
  currency: Currency;
  header: readonly string[];
  columns: RemittanceColumns;
  version: number;
  confirmed: boolean;
  undone_by: string | null;
  lines: Partial<Record<LineFate, number>>;
  posted_cents: string;
};

function summary(row: SummaryRow): RemittanceSummary {
  return {
    remittanceId: row.remittance_id,
    fileName: row.file_name,
    payer: row.payer,
    reference: row.reference,
    paidOn: row.paid_on,
    currency: row.currency,
    lines: row.lines,
    postedCents: Number(row.posted_cents),
    isConfirmed: row.confirmed,
    undoneBy: row.undone_by ?? undefined,
  };
}

type LineRow = {
  row: number;
  cells: readonly string[];
  fate: LineFate;
  paid_cents: string | null;
  currency: Currency | null;
  payer_text: string;
  reason: RefusalReason | null;
  match: RemittanceMatch | null;
  shares: readonly ClaimShare[] | null;
  sentence: string;
};

function lineRow(row: LineRow): RemittanceLineRow {
  return {
    row: row.row,
    cells: row.cells,
    fate: row.fate,
    paidCents: row.paid_cents === null ? undefined : Number(row.paid_cents),
    currency: row.currency ?? undefined,
    payerText: row.payer_text,
    reason: row.reason ?? undefined,
    match: row.match ?? undefined,
    shares: row.shares ?? [],
    sentence: row.sentence,
  };
}
