// Jobs of a large file while none is on file. What a row must agree with is then told by few rows: one for each unit of
// the file, and one for each model, kind of appliance, component and symptom that stand together in it.
import type { Transaction } from "@/db/database-types";
import { agreedFacts, factColumns, possibleFacts } from "../kinds/agreed-facts";
import { jobKeys } from "../kinds/job-keys";
import { noteUnitFacts } from "../kinds/note-unit-facts";
import { unitFacts } from "../kinds/unit-facts";
import { noteWords } from "../kinds/words-in-use";
import { insertRows } from "../staging/merge-staged";
import { run } from "../staging/run";
import type { Staged, StagedKind } from "../staging/staged-kind";
import { any, type FirstLoad } from "./first-load";
import { noteMade, noteUsedRows } from "./made-rows";

const unitsOf = (table: string) => `${table}_units`;
const modelsOf = (table: string) => `${table}_models`;
const wordsOf = (table: string) => `${table}_words`;

export const firstJobs: FirstLoad = {
  derived: jobKeys,
  async agree(tx, staged) {
    const { table } = staged;
    await run(tx, gatherWords(table));
    if (await any(tx, `select from ${wordsOf(table)} where never_completed`)) return false;
    await run(tx, gatherModels(table));
    if (await any(tx, `select from ${modelsOf(table)} where kind is null or kinds_differ`)) return false;
    if (await any(tx, wrongWords(table))) return false;
    if (await any(tx, `select from ${table} where readable group by job_id having count(*) > 1`)) return false;
    await run(tx, gatherUnits(staged));
    const fills = unitFacts.some(({ from }) => staged.present.has(from)); // blanks of a unit on file, which is done row by row
    const asked = fills ? "models_differ or known" : "models_differ";
    return !(await any(tx, `select from ${unitsOf(table)} where ${asked}`));
  },
  async settle(tx, { table }) {
    await run(tx, `alter table ${table} rename column given_unit_id to unit_id`);
    await run(tx, `alter table ${table} add column joins_from bigint`);
  },
  async store(tx, staged, kind, batchId) {
    await storeModels(tx, staged.table);
    await storeUnits(tx, staged, batchId);
    await storeJobs(tx, staged, kind, batchId);
  },
  models: ({ table }) =>
    `select m.model_id as id from ${modelsOf(table)} f join makers k on k.normalised = f.maker_n join models m on m.maker_id = k.maker_id and m.normalised = f.model_n`,
};

function gatherWords(table: string): string {
  return `create temporary table ${wordsOf(table)} on commit drop as
    select maker_n, model_n, product_type, component, symptom, min(row) as row, bool_or(completed_on is null) as never_completed from ${table} where readable group by 1, 2, 3, 4, 5`;
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

/** Each unit with its first row, what all its rows agree on, and whether it is on file already. */
function gatherUnits({ table, present }: Staged): string {
  return `create temporary table ${unitsOf(table)} on commit drop as
    select first.unit_id, first.row, ${possibleFacts()}, s.maker_n, s.model_n, s.serial, s.serial_normalised, u.unit_id is not null as known,
      first.least <> first.most or (m.normalised <> s.model_n) is true as models_differ
    from (select given_unit_id as unit_id, min(row) as row, min(model_n) as least, max(model_n) as most, ${agreedFacts(present)}
          from ${table} where readable group by 1) first
    join ${table} s on s.row = first.row left join units u on u.unit_id = first.unit_id left join models m on m.model_id = u.model_id`;
}

/** Makers and models that nobody has stored, as the first row that names them spells them. */
async function storeModels(tx: Transaction, table: string): Promise<void> {
  await run(
    tx,
    `insert into makers (name, normalised)
     select s.maker, f.maker_n from (select maker_n, min(row) as row from ${modelsOf(table)} group by 1) f join ${table} s using (row) order by f.maker_n
     on conflict (normalised) do nothing`,
  );
  await run(
    tx,
    `insert into models (maker_id, product_type, number, normalised)
     select k.maker_id, f.kind, s.model, f.model_n
     from ${modelsOf(table)} f join ${table} s using (row) join makers k on k.normalised = f.maker_n order by k.maker_id, f.model_n
     on conflict (maker_id, normalised) do nothing`,
  );
}

async function storeUnits(tx: Transaction, { table, fills }: Staged, batchId: number): Promise<void> {
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

async function storeJobs(tx: Transaction, staged: Staged, kind: StagedKind, batchId: number): Promise<void> {
  const { table } = staged;
  await insertRows(tx, staged, kind, { batchId });
  const from = `select unit_id, job_id, row from ${table} where fate = 'new'`;
  await noteMade(tx, { table: "jobs", key: ["unit_id", "job_id"], from, batchId });
  await noteUnitFacts(tx, staged, batchId);
  await noteWords(tx, {
    rows: `select distinct w.component, m.kind from ${wordsOf(table)} w join ${modelsOf(table)} m using (maker_n, model_n) where w.component is not null`,
    batchId,
  });
}
