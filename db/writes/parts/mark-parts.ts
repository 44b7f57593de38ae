// Numbers whose use changed: they are noted in the transaction that changed it, and looked at after it.
import { sql } from "drizzle-orm";
import type { Transaction } from "../../database-types";
import { run } from "../staging/run";
import type { StagedPart } from "../staging/staged-file";

/** The numbers on one job, and those of the component that it names: how often it fails bears on all of them. */
export async function markPartsOfJob(tx: Transaction, unitId: string, jobId: string): Promise<void> {
  await tx.rows(sql`
    insert into parts_to_forecast
    select part_number from part_lines where unit_id = ${unitId} and job_id = ${jobId}
    union select jsonb_array_elements_text(o.spellings) from part_outlooks o join jobs j using (component)
      where j.unit_id = ${unitId} and j.job_id = ${jobId}
    order by 1 on conflict do nothing`);
}

/** Rows of a load from which nobody asks which parts they concern: it is most of them. */
const manyRows = 20_000;

/**
 * The numbers on all jobs that staged rows make or change: asked before and after the merge, since lines change their
 * numbers. Machines bear on every part that they carry.
 */
export async function markStagedParts(tx: Transaction, parts: readonly StagedPart[], rows: number): Promise<void> {
  for (const { staged, kind } of parts) {
    const [ofParts, ofMachines] = [kind.kind === "parts", kind.kind === "units"];
    if (kind.kind !== "jobs" && kind.kind !== "part-lines" && !ofParts && !ofMachines) continue;
    if (ofParts || ofMachines || rows > manyRows || staged.agreed === true) {
      await markAllParts(tx);
      continue;
    }
    await run(
      tx,
      `insert into parts_to_forecast select distinct p.part_number from part_lines p
       join (select distinct unit_id, job_id from ${staged.table} where fate in ('new', 'changed')) s using (unit_id, job_id)
       order by 1 on conflict do nothing`,
    );
    if (kind.kind !== "jobs") continue;
    await run(
      tx,
      `insert into parts_to_forecast select distinct jsonb_array_elements_text(o.spellings) from part_outlooks o
       where o.component in (select j.component from jobs j join ${staged.table} s using (unit_id, job_id) where s.fate in ('new', 'changed'))
       order by 1 on conflict do nothing`,
    );
  }
}

/** The numbers on all jobs that taking a load back weighs. */
export async function markTakenParts(tx: Transaction): Promise<void> {
  await run(
    tx,
    `insert into parts_to_forecast select distinct p.part_number from part_lines p join taking g
       on p.unit_id = split_part(g.key, chr(31), 1)::bigint and p.job_id = split_part(g.key, chr(31), 2)::bigint
     where g.table_name in ('jobs', 'part_lines') and g.verdict <> 'forget' order by 1 on conflict do nothing`,
  );
  const [shared] = await tx.rows(
    sql`select from taking where table_name in ('parts', 'units') and verdict <> 'forget' limit 1`,
  );
  if (shared !== undefined) await markAllParts(tx);
}

/** All numbers that are counted under a current number. */
export async function markFamily(tx: Transaction, partKey: string): Promise<void> {
  await tx.rows(sql`
    insert into parts_to_forecast select jsonb_array_elements_text(spellings) from part_outlooks where part_key = ${partKey}
    order by 1 on conflict do nothing`);
}

/** Stands for every part among the numbers that are marked. */
export const everyPart = "*";

/** What took the place of what, or what parts cost, has changed, or so much that asking what would take long. */
export async function markAllParts(tx: Transaction): Promise<void> {
  await tx.rows(sql`insert into parts_to_forecast values (${everyPart}) on conflict do nothing`);
}
