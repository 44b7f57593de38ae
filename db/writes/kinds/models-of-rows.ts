import type { Transaction } from "@/db/database-types";
import { run } from "../staging/run";
import type { Staged } from "../staging/staged-kind";

/** Stores makers that the rows name and nobody has stored. `rows` is a condition on the staging row `s`. */
export async function storeMakers(tx: Transaction, { table }: Staged, rows: string): Promise<void> {
  await run(
    tx,
    `insert into makers (name, normalised)
     select s.maker, s.maker_n from ${table} s join (select min(row) as row from ${table} s where ${rows} group by maker_n) first using (row) order by maker_n
     on conflict (normalised) do nothing`,
  );
}

/** Stores models that the rows name and nobody has stored; `type` is the staging column with the kind of appliance. */
export async function storeModels(
  tx: Transaction,
  { table }: Staged,
  { rows, type }: { rows: string; type: string },
): Promise<void> {
  await run(
    tx,
    `insert into models (maker_id, product_type, number, normalised)
     select k.maker_id, s.${type}, s.model, s.model_n
     from ${table} s join (select min(row) as row from ${table} s where ${rows} group by maker_n, model_n) first using (row)
     join makers k on k.normalised = s.maker_n order by k.maker_id, s.model_n
     on conflict (maker_id, normalised) do nothing`,
  );
}

/** Number of the model of units whose model nobody stated; there is one for each maker and kind of appliance. */
export const unstatedModel = "not stated";

/**
 * True where two normalised model numbers can be the same model: equal, or one is the beginning of the other, which
 * happens where a suffix was dropped, or either was not stated (which is written ~ and the kind of appliance). Fewer than four characters begin too many models to say so.
 */
export function sameModel(a: string, b: string): string {
  return `(${a} = ${b} or starts_with(${a}, '~') or starts_with(${b}, '~') or (least(length(${a}), length(${b})) >= 4 and (starts_with(${a}, ${b}) or starts_with(${b}, ${a}))))`;
}

/**
 * Rows of one model that name different kinds of appliance, against what is stored or else in the file: the kind that
 * most rows name is the model's, and where as many name another, none of them can be believed.
 */
export function contradictingTypes(table: string): string {
  return `select s.row, 'product_type', s.product_type,
            case when m.product_type is null and f.tied then 'is one of two kinds that as many rows give model ' || s.model
              else 'is not the kind of model ' || s.model || ', which is ' || coalesce(m.product_type, f.product_type) end, 'Correct the kind of appliance or the model.'
     from ${table} s
     left join makers k on k.normalised = s.maker_n
     left join models m on m.maker_id = k.maker_id and m.normalised = s.model_n
     left join ${usualTypes(table)} f on f.maker_n = s.maker_n and f.model_n = s.model_n
     where s.readable and (s.product_type <> coalesce(m.product_type, f.product_type) or s.product_type is not null and m.product_type is null and f.tied)`;
}

/** SQL for the kind of appliance that most rows of each model give; none, and `tied`, where as many give another. */
export function usualTypes(table: string): string {
  return `(select maker_n, model_n, case when tied is not true then product_type end as product_type, tied from (
      select distinct on (maker_n, model_n) maker_n, model_n, product_type,
        rows = lead(rows) over (partition by maker_n, model_n order by rows desc, product_type) as tied
      from (select maker_n, model_n, product_type, count(*) as rows from ${table} where readable and product_type is not null group by 1, 2, 3) each
      order by maker_n, model_n, rows desc, product_type) ranked)`;
}

/**
 * Rows whose serial belongs to another model: of a stored unit, or of another row with that serial; of two such rows
 * nobody but a person can tell which is right, unless what is stored says all that the row says. Plain joins: a look-up for each row would take the square of the file's time.
 */
export function serialsOfOtherModels(table: string): string {
  const mixed = `select unit_id from ${table} where readable and serial_normalised is not null group by unit_id having min(model_n) <> max(model_n)`;
  const named = `(select distinct on (unit_id, model_n) unit_id, model, model_n, row from ${table}
    where readable and serial_normalised is not null and unit_id in (${mixed}) order by unit_id, model_n, row)`;
  return `select s.row, 'serial', s.serial,
            'belongs to model ' || case when f.row is null or not ${sameModel("s.model_n", "m.normalised")} then m.number else f.model || ' in row ' || f.row end || '; this row says ' || s.model,
            'Correct the serial or the model. A suffix of the model number may be missing, nothing else.'
     from ${table} s
     left join (units u join models m using (model_id)) on u.unit_id = s.unit_id
     left join (select distinct on (a.unit_id, a.model_n) a.unit_id, a.model_n as of, b.model, b.model_n, b.row from ${named} a join ${named} b using (unit_id)
                where not ${sameModel("a.model_n", "b.model_n")} order by a.unit_id, a.model_n, b.row) f on f.unit_id = s.unit_id and f.of = s.model_n
     where s.readable and s.serial_normalised is not null
       and (not ${sameModel("s.model_n", "m.normalised")} or f.model_n is not null and (m.normalised is null or not starts_with(m.normalised, s.model_n)))`;
}
