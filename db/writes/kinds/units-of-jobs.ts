import type { Transaction } from "@/db/database-types";
import { noteMade } from "../bulk/made-rows";
import { run } from "../staging/run";
import type { Staged } from "../staging/staged-kind";
import { agreedFacts, factColumns, possibleFacts } from "./agreed-facts";
import { storeMakers, storeModels } from "./models-of-rows";

/**
 * Stores the units that only these jobs name. They are known because they failed, so they are not in the register and
 * carry no exposure. A job without a serial gets a unit of its own, without identity.
 */
export async function storeUnitsOfJobs(tx: Transaction, staged: Staged, batchId: number): Promise<void> {
  const firsts = `${staged.table}_firsts`;
  await run(
    tx,
    `create temporary table ${firsts} on commit drop as
     select s.row, s.unit_id, maker, maker_n, model, model_n, serial, serial_normalised, kind_of_model, ${possibleFacts()}
     from (select row, unit_id, maker, maker_n, model, model_n, serial, serial_normalised, kind_of_model from ${staged.table}) s
     join (select min(row) as row, ${agreedFacts(staged.present)}
           from ${staged.table} where fate is not null and not unit_known group by unit_id) first using (row)`,
  );
  await run(tx, `analyze ${firsts}`);
  await run(tx, fullestModels(staged.table, firsts));
  await storeUnits(tx, { ...staged, table: firsts }, batchId);
  await run(tx, `drop table ${firsts}`);
}

/** SQL: of the models that the rows of a unit give, the one that says most, so that the order of rows never decides. */
function fullestModels(table: string, firsts: string): string {
  const least = (alias: string) => `starts_with(${alias}.model_n, '~'), -length(${alias}.model_n), ${alias}.model_n`;
  return `update ${firsts} f set model = b.model, model_n = b.model_n, kind_of_model = b.kind_of_model
    from (select distinct on (s.unit_id) s.unit_id, s.model, s.model_n, s.kind_of_model
          from ${table} s join ${firsts} t on t.unit_id = s.unit_id and t.model_n <> s.model_n
          where s.fate is not null and not s.unit_known order by s.unit_id, ${least("s")}) b
    where b.unit_id = f.unit_id and (${least("b")}) < (${least("f")})`;
}

/** `table` holds the first row of each unit. */
async function storeUnits(tx: Transaction, staged: Staged, batchId: number): Promise<void> {
  const { table } = staged;
  await storeMakers(tx, staged, "true");
  await storeModels(tx, staged, { rows: "true", type: "kind_of_model" });
  await run(
    tx,
    `insert into units (unit_id, maker_id, model_id, serial, serial_normalised, identified, in_register, use, owner_number, ${factColumns.join(", ")}, batch_id)
     select s.unit_id, k.maker_id, m.model_id, s.serial, s.serial_normalised, s.serial_normalised is not null, false, 'household', 1, ${factColumns.join(", ")}, ${batchId}
     from ${table} s join makers k on k.normalised = s.maker_n join models m on m.maker_id = k.maker_id and m.normalised = s.model_n order by s.unit_id`,
  );
  await noteMade(tx, {
    table: "units",
    key: ["unit_id"],
    from: `select s.unit_id, s.row from ${table} s`,
    batchId,
  });
}
