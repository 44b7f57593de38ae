import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { UnitUse } from "@/lib/domain/unit";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { inServiceBasis, inServiceOn } from "../kinds/in-service";
import { refreshUnclaimed } from "../money/refresh-unclaimed";
import { refreshCounts } from "../refresh-counts";
import { run } from "../staging/run";
import { intakeLock } from "../store-import";
import { noteEdit } from "./note-edit";

/** What a person may set on a unit, as a receipt or a call tells it. Null clears the field. */
export interface UnitRegisterValues {
  readonly shipped_on: Day | null;
  readonly sold_on: Day | null;
  readonly delivered_on: Day | null;
  readonly installed_on: Day | null;
  readonly occupied_on: Day | null;
  readonly registered_on: Day | null;
  readonly use: UnitUse;
  readonly territory: string | null;
  readonly owner_number: number;
}

export interface UnitRegisterEdit {
  readonly unitId: string;
  /** Only the fields that change; the others stay as they are now, whoever set them. */
  readonly changes: Partial<UnitRegisterValues>;
  readonly by: string;
  /** Paper or record that shows them. */
  readonly reason: string;
}

const columns = [
  "shipped_on",
  "sold_on",
  "delivered_on",
  "installed_on",
  "occupied_on",
  "registered_on",
  "use",
  "territory",
  "owner_number",
] as const satisfies readonly (keyof UnitRegisterValues)[];

/**
 * Sets fields of the register by hand. From then on files pass them by and say where they differ; counts and covered
 * work of the unit are judged anew in the same transaction.
 * @returns how many fields changed; undefined where there is no such unit
 * @throws RangeError where nobody says who and why; the database's error where the days contradict each other
 */
export async function saveUnitRegister({ unitId, changes, by, reason }: UnitRegisterEdit): Promise<number | undefined> {
  if (by.trim() === "") throw new RangeError("by: is blank");
  if (reason.trim() === "") throw new RangeError("reason: is blank");
  return await inTransaction(async (tx) => {
    await run(tx, `select pg_advisory_xact_lock(${intakeLock})`);
    const [unit] = await tx.rows<{ modelId: number; before: Readonly<Record<string, unknown>> }>(sql`
      select model_id as "modelId", to_jsonb(u) as before from units u where unit_id = ${unitId} for update`);
    if (unit === undefined) return undefined;
    const changed = columns.filter((column) => column in changes && changes[column] !== unit.before[column]);
    if (changed.length === 0) return 0;
    await setColumns(tx, unitId, changes, changed);
    for (const column of changed) {
      const value = changes[column] ?? null;
      await noteEdit(tx, { table: "units", key: unitId, column, before: unit.before[column], value, by, reason });
    }
    await refreshCounts(tx, [unit.modelId]);
    await refreshUnclaimed(tx, [unitId]);
    return changed.length;
  });
}

async function setColumns(
  tx: Transaction,
  unitId: string,
  changes: Partial<UnitRegisterValues>,
  changed: readonly (keyof UnitRegisterValues)[],
): Promise<void> {
  const sets = changed.map((column) => sql`${sql.identifier(column)} = v.${sql.identifier(column)}`);
  await tx.execute(sql`
    update units t set ${sql.join(sets, sql`, `)}
    from jsonb_populate_record(null::units, ${JSON.stringify(changes)}::jsonb) v where t.unit_id = ${unitId}`);
  const of = (column: string) => `u.${column}`;
  await tx.execute(sql`
    update units u set in_service_on = ${sql.raw(inServiceOn(of))}, in_service_basis = ${sql.raw(inServiceBasis(of))}
    where u.unit_id = ${unitId}`);
}
