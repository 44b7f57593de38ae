// Jobs of a large file while none is on file. What a row must agree with is then told by few rows: one for each unit of
// the file, and one for each model, kind of appliance, component and symptom that stand together in it.
import type { Transaction } from "@/db/database-types";
import { stagingSchema } from "@/db/search-path";
import { agreedFacts, factColumns, possibleFacts } from "../kinds/agreed-facts";
import { inServiceBasis, inServiceOn } from "../kinds/in-service";
import { jobKey, unitKey } from "../kinds/job-keys";
import { noteUnitFacts } from "../kinds/note-unit-facts";
import { unitFacts } from "../kinds/unit-facts";
import { noteWords } from "../kinds/words-in-use";
import { newRows } from "../staging/merge-staged";
import { rowsOf, run } from "../staging/run";
import type { Filled, Staged } from "../staging/staged-kind";
import type { Rows } from "./filling";
import { any, type FirstLoad } from "./first-load";
import { noteMade, noteUsedRows } from "./made-rows";

const unitsOf = (table: string) => `${table}_units`;
const modelsOf = (table: string) => `${table}_models`;
const wordsOf = (table: string) => `${table}_words`;

export const firstJobs: FirstLoad = {
  derived: [jobKey, unitKey("unit_id"), "joins_from bigint"],
  undo: ["rename column unit_id to given_unit_id"],
  async agree(tx, staged, lanes) {
    const { table } = staged;
    const units = lanes.run(gatherUnits(staged));
    await lanes.run(gatherWords(table));
    if (await any(tx, `select from ${wordsOf(table)} where never_completed`)) return false;
    await lanes.run(gatherModels(table));
    if (await any(tx, `select from ${modelsOf(table)} where kind is null or kinds_differ`)) return false;
    if (await any(tx, wrongWords(table))) return false;
    if (await any(tx, `select from ${table} where readable group by job_id having count(*) > 1`)) return false;
    await units;
    const fills = unitFacts.some(({ from }) => staged.present.has(from)); // blanks of a unit on file, which is done row by row
    const asked = fills ? "models_differ or known" : "models_differ";
    return !(await any(tx, `select from ${unitsOf(table)} where ${asked}`));
  },
  async store(tx, staged, kind, batchId) {
    await storeModels(tx, staged.table);
    const rows = [await newUnits(tx, staged, batchId), newRows(staged, kind, { batchId })];
    await staged.filling.insert(rows, () => noteKeys(tx, staged, batchId));
    await noteWhatIsUsed(tx, staged, batchId);
  },
  models: ({ table }) =>
    `select m.model_id as id from ${modelsOf(table)} f join makers k on k.normalised = f.maker_n join models m on m.maker_id = k.maker_id and m.normalised = f.model_n`,
};

function gatherWords(table: string): string {
  return `create unlogged table ${stagingSchema}.${wordsOf(table)} as
    select maker_n, model_n, product_type, component, symptom, min(row) as row, bool_or(completed_on is null) as never_completed from ${table} where readable group by 1, 2, 3, 4, 5`;
}

/** Each model as its first row spells it, with the kind of appliance that the file and what is stored agree on. */
function gatherModels(table: string): string {
  return `create unlogged table ${stagingSchema}.${modelsOf(table)} as
    select f.maker_n, f.model_n, f.row, s.maker, s.model, coalesce(m.product_type, f.kind) as kind,
      f.differ or (m.product_type <> f.kind) is true as kinds_differ
    from (select maker_n, model_n, min(row) as row, min(product_type) as kind, (min(product_type) <> max(product_type)) is true as differ
          from ${wordsOf(table)} group by 1, 2) f join ${table} s using (row)
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
  return `create unlogged table ${stagingSchema}.${unitsOf(table)} as
    select first.unit_id, first.row, ${possibleFacts()}, s.maker_n, s.model_n, s.serial, s.serial_normalised, u.unit_id is not null as known,
      first.least <> first.most or (m.normalised <> s.model_n) is true as models_differ
    from (select unit_id, min(row) as row, min(model_n) as least, max(model_n) as most, ${agreedFacts(present)}
          from ${table} where readable group by 1) first
    join ${table} s on s.row = first.row left join units u on u.unit_id = first.unit_id left join models m on m.model_id = u.model_id`;
}

/** Makers and models that nobody has stored, as the first row that names them spells them. */
async function storeModels(tx: Transaction, table: string): Promise<void> {
  await run(
    tx,
    `insert into makers (name, normalised)
     select distinct on (maker_n) maker, maker_n from ${modelsOf(table)} order by maker_n, row
     on conflict (normalised) do nothing`,
  );
  await run(
    tx,
    `insert into models (maker_id, product_type, number, normalised)
     select k.maker_id, f.kind, f.model, f.model_n
     from ${modelsOf(table)} f join makers k on k.normalised = f.maker_n order by k.maker_id, f.model_n
     on conflict (maker_id, normalised) do nothing`,
  );
}

/** Their models are told by numbers, since nobody else sees those that this load has just stored. */
async function newUnits(tx: Transaction, { table, filling }: Filled, batchId: number): Promise<Rows> {
  const facts = factColumns.join(", ");
  const placed = (column: string) => (factColumns.includes(column) ? `s.${column}` : "null::date");
  const [told = { rows: "{}", makers: "{}", models: "{}" }] = await rowsOf<
    Record<"rows" | "makers" | "models", string>
  >(
    tx,
    `select coalesce(array_agg(f.row)::text, '{}') as rows, coalesce(array_agg(m.maker_id)::text, '{}') as makers, coalesce(array_agg(m.model_id)::text, '{}') as models
     from ${modelsOf(table)} f join makers k on k.normalised = f.maker_n join models m on m.maker_id = k.maker_id and m.normalised = f.model_n`,
  );
  return {
    table: "units",
    statement: `insert into units (unit_id, maker_id, model_id, serial, serial_normalised, identified, in_register, use, owner_number, ${facts}, in_service_on, in_service_basis, batch_id)
      select s.unit_id, m.maker_id, m.model_id, s.serial, s.serial_normalised, s.serial_normalised is not null, false, 'household', 1, ${facts}, ${inServiceOn(placed)}, ${inServiceBasis(placed)}, ${batchId}
      from unnest('${told.rows}'::integer[], '${told.makers}'::integer[], '${told.models}'::integer[]) m(row, maker_id, model_id)
      join ${modelsOf(table)} f on f.row = m.row join ${unitsOf(table)} s on s.maker_n = f.maker_n and s.model_n = f.model_n
      where not s.known ${filling.tables.includes("units") ? "" : "order by s.unit_id"}`,
  };
}

async function noteKeys(tx: Transaction, { table }: Staged, batchId: number): Promise<void> {
  const units = (which: string) => `select unit_id, row from ${unitsOf(table)} where ${which}`;
  await noteMade(tx, { table: "units", key: ["unit_id"], from: units("not known"), batchId });
  await noteUsedRows(tx, { table: "units", key: ["unit_id"], from: units("known"), batchId });
  const jobs = `select unit_id, job_id, row from ${table} where fate = 'new'`;
  await noteMade(tx, { table: "jobs", key: ["unit_id", "job_id"], from: jobs, batchId });
}

async function noteWhatIsUsed(tx: Transaction, staged: Staged, batchId: number): Promise<void> {
  const { table } = staged;
  await noteUnitFacts(tx, staged, batchId);
  await noteWords(tx, {
    rows: `select distinct w.component, m.kind from ${wordsOf(table)} w join ${modelsOf(table)} m using (maker_n, model_n) where w.component is not null`,
    batchId,
  });
}
