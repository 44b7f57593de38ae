import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import { inTransaction } from "../../in-transaction";
import { refreshUnclaimed } from "../money/refresh-unclaimed";
import { noteEdit } from "./note-edit";

export interface UnitFactsEdit {
  readonly unitId: string;
  readonly facts: UnitFactValues;
  readonly by: string;
  /** Paper or record that shows them. */
  readonly reason: string;
}

export interface UnitFactValues {
  readonly firstUsedOn: Day | undefined;
  readonly acquiredOn: Day | undefined;
  readonly transferRegisteredOn: Day | undefined;
  readonly exchangedOn: Day | undefined;
  readonly exchangedSerial: string | undefined;
  readonly serialRemoved: boolean;
}

/**
 * Sets what a person found out about a unit. Each field that changes is kept with its value before, who and why, and
 * covered work of the unit is judged anew.
 * @returns how many fields changed; undefined where there is no such unit
 * @throws RangeError where nobody says who and why; the database's error where the days contradict each other
 */
export async function saveUnitFacts({ unitId, facts, by, reason }: UnitFactsEdit): Promise<number | undefined> {
  if (by.trim() === "") throw new RangeError("by: is blank");
  if (reason.trim() === "") throw new RangeError("reason: is blank");
  return await inTransaction(async (tx) => {
    const [unit] = await tx.rows(sql`select unit_id from units where unit_id = ${unitId} for update`);
    if (unit === undefined) return undefined;
    await tx.execute(sql`insert into unit_facts (unit_id) values (${unitId}) on conflict (unit_id) do nothing`);
    const [row] = await tx.rows<{ before: Readonly<Record<string, unknown>> }>(
      sql`select to_jsonb(f) - 'unit_id' as before from unit_facts f where unit_id = ${unitId}`,
    );
    const next: Readonly<Record<string, string | boolean | null>> = {
      first_used_on: facts.firstUsedOn ?? null,
      acquired_on: facts.acquiredOn ?? null,
      transfer_registered_on: facts.transferRegisteredOn ?? null,
      exchanged_on: facts.exchangedOn ?? null,
      exchanged_serial: facts.exchangedSerial ?? null,
      serial_removed: facts.serialRemoved,
    };
    await tx.execute(sql`
      update unit_facts f set first_used_on = v.first_used_on, acquired_on = v.acquired_on,
        transfer_registered_on = v.transfer_registered_on, exchanged_on = v.exchanged_on,
        exchanged_serial = v.exchanged_serial, serial_removed = v.serial_removed
      from jsonb_populate_record(null::unit_facts, ${JSON.stringify(next)}::jsonb) v where f.unit_id = ${unitId}`);
    const changed = Object.entries(next).filter(([column, value]) => (row?.before[column] ?? null) !== value);
    for (const [column, value] of changed) {
      const before = row?.before[column];
      await noteEdit(tx, { table: "unit_facts", key: unitId, column, before, value, by, reason });
    }
    if (changed.length > 0) await refreshUnclaimed(tx, [unitId]);
    return changed.length;
  });
}

export interface RepairSpanEntry {
  readonly unitId: string;
  readonly fromOn: Day;
  readonly untilOn: Day;
  readonly source: string;
  readonly by: string;
}

/** A span out for repair; a second one from the same day replaces the first. False where there is no such unit. */
export async function saveRepairSpan({ unitId, fromOn, untilOn, source, by }: RepairSpanEntry): Promise<boolean> {
  if (by.trim() === "") throw new RangeError("by: is blank");
  if (source.trim() === "") throw new RangeError("source: is blank");
  if (untilOn < fromOn) throw new RangeError(`untilOn: lies before ${fromOn}: ${untilOn}`);
  return await inTransaction(async (tx) => {
    const stored = await tx.rows(sql`
      insert into repair_spans (unit_id, from_on, until_on, source, entered_by, entered_at)
      select unit_id, ${fromOn}::date, ${untilOn}::date, ${source}, ${by}, now() from units where unit_id = ${unitId}
      on conflict (unit_id, from_on) do update set until_on = excluded.until_on, source = excluded.source,
        entered_by = excluded.entered_by, entered_at = excluded.entered_at
      returning unit_id`);
    if (stored.length > 0) await refreshUnclaimed(tx, [unitId]);
    return stored.length > 0;
  });
}

export async function dropRepairSpan(unitId: string, fromOn: Day): Promise<void> {
  await inTransaction(async (tx) => {
    const dropped = await tx.rows(
      sql`delete from repair_spans where unit_id = ${unitId} and from_on = ${fromOn}::date returning unit_id`,
    );
    if (dropped.length > 0) await refreshUnclaimed(tx, [unitId]);
  });
}
