import type { Transaction } from "@/db/database-types";
import { refreshCounts } from "../refresh-counts";
import { rowsOf, run } from "../staging/run";
import type { Staged } from "../staging/staged-kind";
import { inServiceBasis, inServiceOn } from "./in-service";
import { factPlaces, unitFacts } from "./unit-facts";

/**
 * Blanks of units on file take what all rows of the unit in this file agree on; what is there is never overwritten.
 * Each filled unit is noted as changed by the load, so that taking it back makes the blanks again, and each cell that
 * filled one with its row. Where the days contradict each other or what is on file, nothing of that unit is filled.
 */
export async function fillUnitBlanks(tx: Transaction, staged: Staged, batchId: number): Promise<void> {
  const facts = unitFacts.filter(({ from }) => staged.present.has(from));
  if (facts.length === 0) return;
  await keepWhatOthersFilled(tx, staged, batchId, facts);
  const filling = `${staged.table}_filling`;
  await run(tx, `create temporary table ${filling} on commit drop as ${blanksThatFill(staged.table, facts)}`);
  const [found] = await rowsOf<{ any: boolean }>(tx, `select exists (select from ${filling}) as any`);
  if (found?.any === true) await fill(tx, staged, { batchId, facts, filling });
  await run(tx, `drop table ${filling}`);
}

type Facts = readonly (typeof unitFacts)[number][];

function blanksThatFill(table: string, facts: Facts): string {
  const columns = facts.flatMap((fact) => fact.columns);
  const fills = facts.map(({ columns: [first] }) => `s.${first} is not null and u.${first} is null`).join(" or ");
  const agreed = facts.flatMap(({ columns: names }) => {
    const one = names.map((name) => `min(s.${name}) = max(s.${name})`).join(" and ");
    return names.map((name) => `case when ${one} then min(s.${name}) end as ${name}`);
  });
  const after = (column: string) => (columns.includes(column) ? `coalesce(u.${column}, f.${column})` : `u.${column}`);
  return `select f.* from (
      select s.unit_id, ${agreed.join(", ")} from ${table} s join units u using (unit_id)
      where s.fate is not null and s.unit_known and u.identified and (${fills}) group by s.unit_id) f
    join units u using (unit_id)
    where (${facts.map(({ columns: [first] }) => `u.${first} is null and f.${first} is not null`).join(" or ")})
      and (${after("made_from")} > ${after("sold_on")}) is not true and (${inServiceOn(after)} > u.retired_on) is not true`;
}

async function fill(
  tx: Transaction,
  { table }: Staged,
  { batchId, facts, filling }: { readonly batchId: number; readonly facts: Facts; readonly filling: string },
): Promise<void> {
  const columns = facts.flatMap((fact) => fact.columns);
  await run(
    tx,
    `insert into cell_notes (batch_id, row, place, source, "column", raw, taken, note, job_id, unit_id)
    ${facts.map((fact) => filledCells(table, filling, batchId, fact)).join(" union all ")}`,
  );
  await run(
    tx,
    `insert into batch_changes (batch_id, table_name, key, what, before)
     select ${batchId}, 'units', u.unit_id::text, 'changed', to_jsonb(u) from units u join ${filling} f using (unit_id)`,
  );
  const after = (column: string) => (columns.includes(column) ? `coalesce(t.${column}, f.${column})` : `t.${column}`);
  const set = [
    ...columns.map((column) => `${column} = ${after(column)}`),
    `in_service_on = case when t.in_register then ${inServiceOn(after)} end`,
    `in_service_basis = case when t.in_register then ${inServiceBasis(after)} end`,
    `batch_id = ${batchId}`,
  ];
  await run(tx, `update units t set ${set.join(", ")} from ${filling} f where f.unit_id = t.unit_id`);
  await run(
    tx,
    `insert into units_to_judge (unit_id) select unit_id from ${filling} order by 1 on conflict (unit_id) do update set mark = default`,
  );
  const models = await rowsOf<{ id: number }>(
    tx,
    `select distinct u.model_id as id from units u join ${filling} f using (unit_id)
     where not exists (select from ${table} s where s.unit_id = u.unit_id and s.fate in ('new', 'changed'))`,
  ); // those of new and changed rows are counted with the load
  if (models.length > 0)
    await refreshCounts(
      tx,
      models.map(({ id }) => id),
    );
}

function filledCells(
  table: string,
  filling: string,
  batchId: number,
  { from, columns: [first], said }: Facts[number],
): string {
  return `select ${batchId}, s.row, ${factPlaces[from]}, '${from}', '${from}', ${said("s")}, ${said("s")},
      'Filled in on the unit, which was on file without it.', s.job_id, s.unit_id
    from ${table} s join ${filling} f using (unit_id) join units u using (unit_id)
    where s.fate is not null and u.${first} is null and s.${first} is not null and f.${first} is not null`;
}

/** A load that states what an earlier load of jobs had filled in answers for it when that one is taken back. */
async function keepWhatOthersFilled(tx: Transaction, { table }: Staged, batchId: number, facts: Facts): Promise<void> {
  const same = facts.map(({ columns: [first] }) => `s.${first} = u.${first}`).join(" or ");
  await run(
    tx,
    `insert into batch_changes (batch_id, table_name, key, what)
     select distinct ${batchId}, 'units', x.key, 'kept' from batch_changes x join batches b using (batch_id) join units u on u.unit_id = x.key::bigint
     join ${table} s on s.unit_id = u.unit_id
     where x.table_name = 'units' and x.what = 'changed' and b.kind <> 'units' and x.batch_id <> ${batchId} and s.fate is not null and (${same})
     on conflict do nothing`,
  );
}
