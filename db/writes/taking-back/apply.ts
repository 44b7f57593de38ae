import type { Transaction } from "@/db/database-types";
import { run } from "../staging/run";
import { type TakenTable, takenTables } from "./tables";
import { rowOfEntry } from "./weigh";

/** Does to the rows what `taking` says, and hands the batch's entries on or strikes them. */
export async function apply(tx: Transaction, batchId: number): Promise<void> {
  await handOn(tx, batchId);
  await lend(tx);
  for (const table of takenTables) await applyTo(tx, table, batchId);
  await run(
    tx,
    `delete from batch_changes x using taking g
     where x.batch_id = ${batchId} and x.table_name = g.table_name and x.key = g.key and g.verdict <> 'stay'`,
  );
  await keepStaying(tx, batchId);
}

/** Rows that the batch made and that stay keep an entry each; the keys of the others are struck. */
async function keepStaying(tx: Transaction, batchId: number): Promise<void> {
  await run(
    tx,
    `insert into batch_changes (batch_id, table_name, key, what)
     select ${batchId}, g.table_name, g.key, 'made' from taking g where g.verdict = 'stay' and g.what = 'made' on conflict do nothing`,
  );
  await run(tx, `delete from batch_made where batch_id = ${batchId}`);
}

/** The later load takes over this one's entry; where it is the image of what was before, it is still that. */
async function handOn(tx: Transaction, batchId: number): Promise<void> {
  await run(
    tx,
    `update batch_changes n set what = g.what, before = g.before from taking g
     where g.verdict = 'hand on' and n.table_name = g.table_name and n.key = g.key and n.batch_id = g.named_by`,
  );
  await run(
    tx,
    `update batch_changes c set before = jsonb_set(c.before, '{batch_id}', to_jsonb(g.named_by)) from taking g
     where g.verdict = 'hand on' and c.table_name = g.table_name and c.key = g.key and c.what = 'changed'
       and c.batch_id <> ${batchId} and (c.before ->> 'batch_id')::bigint = ${batchId}`,
  );
}

async function lend(tx: Transaction): Promise<void> {
  await run(
    tx,
    `insert into batch_changes (batch_id, table_name, key, what) select g.used_by, g.table_name, g.key, 'made' from taking g where g.verdict = 'lend'
     on conflict (table_name, key, batch_id) do update set what = 'made'`,
  );
}

/** What a unit is when only a job names it. */
const unitOfJob =
  "in_register = false, use = 'household', owner_number = 1, territory = null, in_service_on = null, in_service_basis = null, made_from = null, made_until = null, shipped_on = null, sold_on = null, delivered_on = null, installed_on = null, occupied_on = null, registered_on = null, retired_on = null, recorded_from = null,";

async function applyTo(tx: Transaction, table: TakenTable, batchId: number): Promise<void> {
  const { name, restored } = table;
  const row = `g.table_name = '${name}' and ${rowOfEntry(table)}`;
  await run(
    tx,
    `update ${name} t set batch_id = g.named_by from taking g where g.verdict = 'hand on' and ${row} and t.batch_id = ${batchId}`,
  );
  await run(
    tx,
    `update ${name} t set ${name === "units" ? unitOfJob : ""} batch_id = g.used_by from taking g where g.verdict = 'lend' and ${row}`,
  );
  const columns = [...restored, "batch_id"];
  await run(
    tx,
    `update ${name} t set (${columns.join(", ")}) = (select ${columns.map((column) => `b.${column}`).join(", ")} from jsonb_populate_record(null::${name}, g.before) b)
     from taking g where g.verdict = 'restore' and ${row}`,
  );
  await run(tx, `delete from ${name} t using taking g where g.verdict = 'remove' and ${row}`);
}
