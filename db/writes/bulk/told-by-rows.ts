// What few rows of a large file tell: one for each unit, and one for each model with the words beside it. They stand in
// temporary tables that are named after the file's own.
import type { Transaction } from "@/db/database-types";
import { factColumns } from "../kinds/agreed-facts";
import { noteWords } from "../kinds/words-in-use";
import { run } from "../staging/run";
import type { Staged } from "../staging/staged-kind";
import { any } from "./first-load";
import { noteMade, noteUsedRows } from "./made-rows";

export const unitsOf = (table: string) => `${table}_units`;
/** maker_n, model_n, product_type, component, symptom, and the first row in which they stand together. */
export const wordsOf = (table: string) => `${table}_words`;
const modelsOf = (table: string) => `${table}_models`;

/** Whether the words contradict each other or what is on file; gathers the models from them. */
export async function wordsContradict(tx: Transaction, table: string): Promise<boolean> {
  await run(tx, gatherModels(table));
  if (await any(tx, `select from ${modelsOf(table)} where kind is null or kinds_differ`)) return true;
  return await any(tx, wrongWords(table));
}

/** SQL for the models of the file, as `id`, once they are stored. */
export function storedModels(table: string): string {
  return `select m.model_id as id from ${modelsOf(table)} f join makers k on k.normalised = f.maker_n join models m on m.maker_id = k.maker_id and m.normalised = f.model_n`;
}

/** Notes which components the rows use. */
export async function noteComponents(tx: Transaction, table: string, batchId: number): Promise<void> {
  await noteWords(tx, {
    rows: `select distinct w.component, m.kind from ${wordsOf(table)} w join ${modelsOf(table)} m using (maker_n, model_n) where w.component is not null`,
    batchId,
  });
}

/** Makers and models that nobody has stored, as the first row that names them spells them. @param spelled  the relation in which that row stands once */
export async function storeModels(tx: Transaction, table: string, spelled: string): Promise<void> {
  await run(
    tx,
    `insert into makers (name, normalised)
     select s.maker, f.maker_n from (select maker_n, min(row) as row from ${modelsOf(table)} group by 1) f join ${spelled} s using (row) order by f.maker_n
     on conflict (normalised) do nothing`,
  );
  await run(
    tx,
    `insert into models (maker_id, product_type, number, normalised)
     select k.maker_id, f.kind, s.model, f.model_n
     from ${modelsOf(table)} f join ${spelled} s using (row) join makers k on k.normalised = f.maker_n order by k.maker_id, f.model_n
     on conflict (maker_id, normalised) do nothing`,
  );
}

export async function storeUnits(tx: Transaction, { table, fills }: Staged, batchId: number): Promise<void> {
  const facts = factColumns.join(", ");
  await run(
    tx,
    `insert into units (unit_id, maker_id, model_id, serial, serial_normalised, identified, in_register, use, owner_number, ${facts}, batch_id)
     select s.unit_id, k.maker_id, m.model_id, s.serial, s.serial_normalised, s.serial_normalised is not null, false, 'household', 1, ${facts}, ${batchId}
     from ${unitsOf(table)} s join makers k on k.normalised = s.maker_n join models m on m.maker_id = k.maker_id and m.normalised = s.model_n
     where not s.known ${fills?.includes("units") === true ? "" : "order by s.unit_id"}`,
  );
  const rows = (which: string) => `select unit_id, row from ${unitsOf(table)} where ${which}`;
  await noteMade(tx, { table: "units", key: ["unit_id"], from: rows("not known"), batchId });
  await noteUsedRows(tx, { table: "units", key: ["unit_id"], from: rows("known"), batchId });
}

/** Each model with the kind of appliance that the file and what is stored agree on. */
function gatherModels(table: string): string {
  return `create temporary table ${modelsOf(table)} on commit drop as
    select f.maker_n, f.model_n, f.row, coalesce(m.product_type, f.kind) as kind,
      f.differ or (m.product_type <> f.kind) is true as kinds_differ
    from (select maker_n, model_n, min(row) as row, min(product_type) as kind, (min(product_type) <> max(product_type)) is true as differ
          from ${wordsOf(table)} group by 1, 2) f
    left join makers k on k.normalised = f.maker_n left join models m on m.maker_id = k.maker_id and m.normalised = f.model_n`;
}

/** Components and symptoms that the kind of appliance does not have. */
function wrongWords(table: string): string {
  const lacks = (word: string) =>
    `w.${word} is not null and not exists (select from ${word}_uses u where u.${word} = w.${word} and u.product_type = m.kind)`;
  return `select from ${wordsOf(table)} w join ${modelsOf(table)} m using (maker_n, model_n) where (${lacks("component")}) or (${lacks("symptom")})`;
}
