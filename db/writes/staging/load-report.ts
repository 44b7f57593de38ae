import { sql } from "drizzle-orm";
import type { Transaction } from "@/db/database-types";
import type { RowProblem } from "@/lib/intake/parsed";
import type { FieldChange, KeptEdit, LoadReport, OfferedCell, RefusedRow } from "../load-result";
import { nameColumn } from "./name-column";
import { rowsOf } from "./run";
import { changeableColumns, storedAt } from "./settle-fates";
import type { StagedFile, StagedPart } from "./staged-file";

/** Beyond this a list of what goes well is read by nobody. */
const mostShown = 1_000;

/** What became of the rows, once each has its fate. @param limit  how many rows with problems it names */
export async function loadReport(tx: Transaction, file: StagedFile, limit: number): Promise<LoadReport> {
  const table = rowTable(file);
  const counted = await countFates(tx, file);
  const changes: FieldChange[] = [];
  const shown = Math.min(limit, mostShown);
  if (file.rows !== undefined || counted.rowsChanged > 0)
    for (const part of file.parts) changes.push(...(await firstChanges(tx, part, shown)));
  return {
    fileKind: file.kind,
    ...counted,
    problems: counted.rowsHeld === 0 ? [] : await firstProblems(tx, table, limit),
    refused: counted.rowsRefused === 0 ? [] : await firstRefused(tx, table, limit),
    changes: changes.toSorted((a, b) => a.row - b.row).slice(0, shown),
    keptEdits: await firstKeptEdits(tx, file, shown),
    offers: file.rows === undefined ? [] : await firstOffers(tx, table, shown),
  };
}

/** The table in which each row of the file stands once. */
export function rowTable({ rows, parts }: StagedFile): string {
  const table = rows?.table ?? parts[0]?.staged.table;
  if (table === undefined) throw new RangeError("file: holds neither rows nor records");
  return table;
}

async function countFates(tx: Transaction, file: StagedFile) {
  const refused = file.rows === undefined ? "0" : "count(*) filter (where fate = 'refused')::integer";
  const [counted] = await rowsOf<Record<"total" | "new" | "changed" | "same" | "held" | "refused", number>>(
    tx,
    `select count(*)::integer as total, count(*) filter (where fate = 'new')::integer as new, count(*) filter (where fate = 'changed')::integer as changed,
            count(*) filter (where fate = 'same')::integer as same, count(*) filter (where problems is not null)::integer as held, ${refused} as refused
     from ${rowTable(file)}`,
  );
  if (counted === undefined) throw new Error("A count gave no row.");
  const { total, new: added, changed, same, held, refused: refusedRows } = counted;
  if (added + changed + same + held + refusedRows !== total)
    throw new Error(`Of ${total} rows, ${total - added - changed - same - held - refusedRows} have no fate.`);
  return {
    rowsTotal: total,
    rowsNew: added,
    rowsChanged: changed,
    rowsSame: same,
    rowsHeld: held,
    rowsRefused: refusedRows,
  };
}

async function firstProblems(tx: Transaction, table: string, limit: number): Promise<readonly RowProblem[]> {
  const held = await rowsOf<{ row: number; problems: Omit<RowProblem, "row">[] }>(
    tx,
    `select row, problems from ${table} where problems is not null order by row limit ${limit}`,
  );
  return held.flatMap(({ row, problems }) => problems.map((problem) => ({ row, ...problem })));
}

async function firstRefused(tx: Transaction, table: string, limit: number): Promise<readonly RefusedRow[]> {
  return await rowsOf<{ row: number; reason: string }>(
    tx,
    `select row, reason from ${table} where fate = 'refused' order by row limit ${limit}`,
  );
}

async function firstOffers(tx: Transaction, table: string, limit: number): Promise<readonly OfferedCell[]> {
  return await rowsOf<OfferedCell & Record<string, unknown>>(
    tx,
    `select r.row, n.note ->> 'source' as "column", n.note ->> 'raw' as value, n.note ->> 'note' as note, n.note -> 'offers' as offers
     from ${table} r cross join lateral jsonb_array_elements(r.notes) with ordinality as n(note, place)
     where r.notes is not null and r.problems is null and n.note ? 'offers' order by r.row, n.place limit ${limit}`,
  );
}

type ChangeRow = { row: number; name: string; column: string; before: string | null; after: string | null };

async function firstChanges(tx: Transaction, part: StagedPart, limit: number): Promise<readonly FieldChange[]> {
  const { staged, kind } = part;
  const columns = changeableColumns(staged, kind).map(({ name }) => name);
  if (columns.length === 0) return [];
  const values = columns.map((name) => `('${name}', t.${name}::text, s.${name}::text)`).join(", ");
  const found = await rowsOf<ChangeRow>(
    tx,
    `select s.row, s.${nameColumn(kind)}::text as name, c."column", c.before, c.after
     from (select * from ${staged.table} where fate = 'changed' order by row limit ${limit}) s join ${kind.target.table} t on ${storedAt(kind)}
     cross join lateral (values ${values}) as c("column", before, after) where c.before is distinct from c.after order by s.row limit ${limit}`,
  );
  return found.map(({ before, after, ...change }) => ({
    ...change,
    noun: kind.named.noun,
    before: before ?? undefined,
    after: after ?? undefined,
  }));
}

async function firstKeptEdits(tx: Transaction, { parts }: StagedFile, limit: number): Promise<readonly KeptEdit[]> {
  const found = await tx.rows<ChangeRow & { kind: string; editedAt: string; by: string }>(sql`
    select k.row, k.kind, k.name, k.column_name as "column", k.kept_value #>> '{}' as before, k.file_value #>> '{}' as after, e.at::text as "editedAt", e.by
    from kept_edits k join hand_edits e using (edit_id) order by k.row, k.column_name limit ${limit}`);
  return found.map(({ kind, before, after, ...edit }) => ({
    ...edit,
    noun: parts.find((part) => part.kind.kind === kind)?.kind.named.noun ?? kind,
    before: before ?? undefined,
    after: after ?? undefined,
  }));
}
