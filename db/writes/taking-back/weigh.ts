import type { Transaction } from "@/db/database-types";
import { madeRows, rowsUsedByOthers } from "../bulk/made-rows";
import { run } from "../staging/run";
import { type TakenTable, takenTables } from "./tables";

/**
 * Fills a temporary table `taking` with everything that the batch did to rows and what is to become of it:
 * - forget: it changed nothing there.
 * - remove: it made the row, and nobody else needs it.
 * - restore: it changed the row, and nobody has since.
 * - hand on: a later load named the row too, so the row stays and that load answers for it.
 * - lend: it made the row, and rows of another load hang on it; the row stays for those, without what this load knew.
 * - stay: the row is not as the batch left it, a claim stands on it, or rows without a load hang on it.
 * `heir` is the batch that answers for the row from now on.
 */
export async function weigh(tx: Transaction, batchId: number): Promise<void> {
  await run(
    tx,
    `create temporary table taking on commit drop as
     select x.table_name, x.key, x.what, x.before, null::text as verdict, null::text as reason, null::text as label,
       (select min(n.batch_id) from batch_changes n where n.table_name = x.table_name and n.key = x.key and n.batch_id > x.batch_id and n.what in ('kept', 'changed')) as named_by,
       (select min(n.batch_id) from batch_changes n where n.table_name = x.table_name and n.key = x.key and n.batch_id <> x.batch_id and n.what = 'used') as used_by
     from (select table_name, key, what, before, batch_id from batch_changes where batch_id = ${batchId}
           union all select table_name, ${keyWhereItLives}, 'made', null, ${batchId} from (${madeRows(batchId)}) m) x`,
  );
  await run(tx, "create index on taking (table_name, key)");
  await run(tx, "analyze taking");
  await run(
    tx,
    `update taking g set used_by = least(g.used_by, u.batch_id) from (select m.table_name, ${keyWhereItLives} as key, m.batch_id from (${rowsUsedByOthers(batchId)}) m) u
     where u.table_name = g.table_name and u.key = g.key and g.what = 'made'`,
  );
  await run(tx, "update taking set verdict = 'forget' where what in ('kept', 'used')");
  for (const table of takenTables) await weighTable(tx, table, batchId);
  await run(tx, "update taking set verdict = 'forget' where verdict is null"); // the row is gone already
  for (const table of takenTables) await keepEditedFields(tx, table);
}

/** SQL: the key of made row `m`, by the unit on which its job is now: a job that joined its real unit took its rows along. */
const keyWhereItLives = `case when (select exists (select from job_joins)) and m.table_name in ('jobs', 'part_lines', 'readings', 'attachments')
  then coalesce((select w.unit_id || substr(m.key, strpos(m.key, chr(31))) from job_joins j join jobs w on w.job_id = j.job_id and w.unit_id in (j.from_unit_id, j.to_unit_id)
    where j.job_id = split_part(m.key, chr(31), 2)::bigint limit 1), m.key) else m.key end`;

/** SQL: a person edited the row of entry `g` since. */
const edited =
  "exists (select from hand_edits e where e.table_name = g.table_name and e.key = g.key and e.lifted_at is null)";

/** SQL: the row `t` that entry `g` speaks of. */
export function rowOfEntry({ key }: TakenTable): string {
  return key
    .map(({ column, type }, index) => `t.${column} = split_part(g.key, chr(31), ${index + 1})::${type}`)
    .join(" and ");
}

async function weighTable(tx: Transaction, table: TakenTable, batchId: number): Promise<void> {
  await run(
    tx,
    `update taking g set label = ${table.label}, (verdict, reason) = (
       select split_part(judged, '|', 1), nullif(split_part(judged, '|', 2), '')
       from (select case
         when g.named_by is not null then 'hand on|load ' || g.named_by || ' names it too'
         when t.batch_id is distinct from ${batchId} then 'stay|it was changed by hand since'
         when ${table.claimed} then 'stay|a claim stands on it'
         when g.what = 'changed' then 'restore'
         when ${edited} then 'stay|it was edited by hand since'
         when g.used_by is not null then 'lend|rows of load ' || g.used_by || ' hang on it'
         when ${table.inUse} then 'stay|other rows hang on it'
         else 'remove' end) as each(judged))
     from ${table.name} t
     where g.table_name = '${table.name}' and g.verdict is null and ${rowOfEntry(table)}`,
  );
}

/** A row returns to what it was before, but fields that were edited by hand stay as they are. */
async function keepEditedFields(tx: Transaction, table: TakenTable): Promise<void> {
  await run(
    tx,
    `update taking g set before = g.before || k.kept
     from (select g.key, jsonb_object_agg(e.column_name, to_jsonb(t) -> e.column_name) as kept
           from taking g join hand_edits e on e.table_name = g.table_name and e.key = g.key and e.lifted_at is null
           join ${table.name} t on ${rowOfEntry(table)}
           where g.table_name = '${table.name}' and g.verdict = 'restore' and g.what = 'changed' group by g.key) k
     where g.table_name = '${table.name}' and g.key = k.key and g.what = 'changed'`,
  );
}
