import type { Transaction } from "@/db/database-types";
import { rowsOf } from "../staging/run";
import type { Staged } from "../staging/staged-kind";

/**
 * A row that does not say which kind of appliance it is, and whose model does not either, may stand beside rows that
 * do: of the same unit, or of the same model. What they tell is taken until nothing more follows, so that the same
 * rows in a later file, when these are on file, tell no more than now.
 */
export async function spreadKinds(tx: Transaction, { table }: Staged): Promise<void> {
  const known = `readable and kind_of_model is not null and unit_id in (select unit_id from ${table} where readable and kind_of_model is null)`;
  const ofUnit = `select unit_id, min(kind_of_model) as kind from ${table} where ${known} group by 1 having min(kind_of_model) = max(kind_of_model)`;
  const ofModel = `select maker_n, model_n, min(kind_of_model) as kind from ${table} where readable and kind_of_model is not null and model_n <> '~' group by 1, 2 having min(kind_of_model) = max(kind_of_model)`;
  for (;;) {
    const [open] = await rowsOf<{ any: boolean }>(tx, `select exists (select from ${table} where ${without}) as any`);
    if (open?.any !== true) return;
    const told = [
      ...(await rowsOf(tx, taking(table, ofUnit, "k.unit_id = s.unit_id and s.serial_normalised is not null"))),
      ...(await rowsOf(tx, taking(table, ofModel, "k.maker_n = s.maker_n and k.model_n = s.model_n"))),
    ];
    if (told.length === 0) return;
  }
}

const without = "readable and kind_of_model is null";

function taking(table: string, kinds: string, same: string): string {
  return `with told as (update ${table} s set kind_of_model = k.kind from (${kinds}) k where s.readable and s.kind_of_model is null and ${same} returning 1)
    select 1 from told limit 1`;
}

/** Rows that give one serial to two kinds of appliance; nobody but a person can tell which is right. */
export function serialsOfOtherKinds(table: string): string {
  const mixed = `select unit_id from ${table} where readable and serial_normalised is not null and kind_of_model is not null group by 1 having min(kind_of_model) <> max(kind_of_model)`;
  return `select s.row, 'serial', s.serial, 'is given to two kinds of appliance in this file, ' || kinds.first || ' and ' || kinds.last, 'Correct the serial, the model or the kind of appliance.'
     from ${table} s join (select unit_id, min(kind_of_model) as first, max(kind_of_model) as last from ${table} where readable and unit_id in (${mixed}) group by 1) kinds using (unit_id)
     where s.readable and s.serial_normalised is not null
     union all
     select s.row, 'product_type', s.product_type, 'is not the kind of serial ' || s.serial || ', which is on file as ' || s.kind_of_model, 'Correct the serial or the kind of appliance.'
     from ${table} s where s.readable and s.serial_normalised is not null and s.unit_known and starts_with(s.model_n, '~') and s.product_type <> s.kind_of_model`;
}
