import { eq, sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { RefusalReason } from "@/lib/claims/life/refusal-reason";
import { matchRemittance } from "@/lib/claims/remittance/match-remittance";
import { payerWords } from "@/lib/claims/remittance/payer-words";
import type { RemittanceLine, RemittanceMatch } from "@/lib/claims/remittance/remittance-line";
import { parseRemittanceRow } from "@/lib/intake/remittances/parse-remittance-row";
import type { RemittanceColumns } from "@/lib/intake/remittances/remittance-columns";
import { readRows } from "@/lib/intake/tables/read-rows";
import type { SourceItem } from "@/lib/intake/tables/source-row";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { loadAwaitedClaims } from "../../queries/money-awaited";
import { remittanceLines, remittances } from "../../schema/money";
import { atPath } from "./keep-remittance";
import { lockRemittance, type RemittanceRow } from "./locked-remittance";

export interface ColumnsConfirmed {
  readonly remittanceId: number;
  readonly columns: RemittanceColumns;
  readonly by: string;
  readonly today: Day;
}

export type ReadRemittance =
  | { readonly kind: "read"; readonly lines: number }
  | { readonly kind: "refused"; readonly sentence: string };

/** Reads every line by the confirmed columns and matches it to claims. Each row of the file becomes one line with one fate. */
export async function readRemittance({ remittanceId, columns, by, today }: ColumnsConfirmed): Promise<ReadRemittance> {
  if (!columns.fields.includes("paid")) return refuse("Say which column holds the amount paid.");
  return await inTransaction(async (tx) => {
    const list = await lockRemittance(tx, remittanceId);
    if (list === undefined) return refuse("This list is no longer on file.");
    const [posted] = await tx.rows(
      sql`select 1 from remittance_lines where remittance_id = ${remittanceId} and fate in ('posted', 'undone') limit 1`,
    );
    if (posted !== undefined) return refuse("Lines of this list are posted. Take them back before it is read anew.");
    const items = await atPath(list.content, (path) => collect(readRows(path, list.form)));
    const lines = await fatesOf(tx, list, items, { columns, today });
    await tx.delete(remittanceLines).where(eq(remittanceLines.remittanceId, remittanceId));
    for (let at = 0; at < lines.length; at += 500) await tx.insert(remittanceLines).values(lines.slice(at, at + 500));
    const version = list.version + 1;
    await tx
      .update(remittances)
      .set({ columns, columnsConfirmedBy: by, version })
      .where(eq(remittances.remittanceId, remittanceId));
    return { kind: "read", lines: lines.length };
  });
}

type NewLine = typeof remittanceLines.$inferInsert;

async function fatesOf(
  tx: Transaction,
  list: RemittanceRow,
  items: readonly SourceItem[],
  { columns, today }: Pick<ColumnsConfirmed, "columns" | "today">,
): Promise<NewLine[]> {
  const { remittanceId, currency, payer } = list;
  const found = items.map((item) => read(item, { columns, currency, today }));
  const good = found.flatMap((each) => (each.line === undefined ? [] : [each.line]));
  // Claims of other payers are looked at too, so that a foreign claim is named instead of missed.
  const own = new Set((await loadAwaitedClaims(tx, payer)).map(({ claimNumber }) => claimNumber));
  const matches = matchRemittance(good, await loadAwaitedClaims(tx));
  const byRow = new Map(matches.map((match) => [match.row, match]));
  const wordings = await loadWordings(tx, payer);
  return found.map(({ row, cells, line, sentence }): NewLine => {
    const match = byRow.get(row);
    const none = { paidCents: null, currency: null, payerText: "", match: null, shares: null };
    if (line === undefined || match === undefined)
      return { remittanceId, row, cells, ...none, fate: "unreadable", sentence };
    const { paidCents, payerText } = line;
    const common = { remittanceId, row, cells, paidCents, currency: line.currency, payerText, match };
    const reason = wordings.get(payerWords(payerText)) ?? null;
    return { ...common, reason, ...fateOf(match, own, payer) };
  });
}

function fateOf(match: RemittanceMatch, own: ReadonlySet<string>, payer: string) {
  if (match.kind === "unmatched") return { fate: "tray" as const, shares: null, sentence: match.reason };
  const foreign = match.shares.find(({ claimNumber }) => !own.has(claimNumber));
  if (foreign !== undefined) {
    const sentence = `${foreign.claimNumber} is not a claim on ${payer}. Ask whose money this is, or set the line aside.`;
    return { fate: "tray" as const, shares: null, sentence };
  }
  const fate = match.confidence === "sure" ? ("ready" as const) : ("asked" as const);
  return { fate, shares: match.shares, sentence: match.reason };
}

interface FoundRow {
  readonly row: number;
  readonly cells: readonly string[];
  readonly line: RemittanceLine | undefined;
  readonly sentence: string;
}

function read(item: SourceItem, setting: Parameters<typeof parseRemittanceRow>[1]): FoundRow {
  if (item.kind !== "row") {
    const row = item.kind === "unread" ? item.row : (item.problem.row ?? 0);
    const { problem, fix } = item.problem;
    return {
      row,
      cells: item.kind === "unread" ? [item.raw] : [],
      line: undefined,
      sentence: `Row ${row}: ${problem} ${fix}`,
    };
  }
  const parsed = parseRemittanceRow(item, setting);
  if (parsed.ok) return { row: item.row, cells: item.cells, line: parsed.value, sentence: "" };
  const told = parsed.problems.map(({ column, value, problem, fix }) => `${column} “${value}” ${problem}. ${fix}`);
  return { row: item.row, cells: item.cells, line: undefined, sentence: `Row ${item.row}: ${told.join(" ")}` };
}

async function loadWordings(tx: Transaction, payer: string): Promise<ReadonlyMap<string, RefusalReason>> {
  const rows = await tx.rows<{ words: string; reason: RefusalReason }>(
    sql`select distinct on (words) words, reason from payer_wordings where payer = ${payer} order by words, version desc`,
  );
  return new Map(rows.map(({ words, reason }) => [words, reason]));
}

async function collect(items: AsyncIterable<SourceItem>): Promise<SourceItem[]> {
  const all: SourceItem[] = [];
  for await (const item of items)
    if (item.kind !== "row" || item.cells.some((cell) => cell.trim() !== "")) all.push(item);
  return all;
}

function refuse(sentence: string): ReadRemittance {
  return { kind: "refused", sentence };
}
