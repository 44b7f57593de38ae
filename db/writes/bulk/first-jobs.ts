// Jobs of a large file while none is on file. What a row must agree with is then told by few rows: one for each unit of
// the file, and one for each model, kind of appliance, component and symptom that stand together in it.
import type { Transaction } from "@/db/database-types";
import { agreedFacts, possibleFacts } from "../kinds/agreed-facts";
import { jobKeys } from "../kinds/job-keys";
import { noteUnitFacts } from "../kinds/note-unit-facts";
import { unitFacts } from "../kinds/unit-facts";
import { insertRows } from "../staging/merge-staged";
import { run } from "../staging/run";
import type { Staged, StagedKind } from "../staging/staged-kind";
import { any, type FirstLoad } from "./first-load";
import { noteMade } from "./made-rows";
import {
  noteComponents,
  storedModels,
  storeModels,
  storeUnits,
  unitsOf,
  wordsContradict,
  wordsOf,
} from "./told-by-rows";

export const firstJobs: FirstLoad = {
  derived: jobKeys,
  async agree(tx, staged) {
    const { table } = staged;
    await run(tx, gatherWords(table));
    if (await any(tx, `select from ${wordsOf(table)} where never_completed`)) return false;
    if (await wordsContradict(tx, table)) return false;
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
    await storeModels(tx, staged.table, staged.table);
    await storeUnits(tx, staged, batchId);
    await storeJobs(tx, staged, kind, batchId);
  },
  models: ({ table }) => storedModels(table),
};

function gatherWords(table: string): string {
  return `create temporary table ${wordsOf(table)} on commit drop as
    select maker_n, model_n, product_type, component, symptom, min(row) as row, bool_or(completed_on is null) as never_completed from ${table} where readable group by 1, 2, 3, 4, 5`;
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

async function storeJobs(tx: Transaction, staged: Staged, kind: StagedKind, batchId: number): Promise<void> {
  const { table } = staged;
  await insertRows(tx, staged, kind, { batchId });
  const from = `select unit_id, job_id, row from ${table} where fate = 'new'`;
  await noteMade(tx, { table: "jobs", key: ["unit_id", "job_id"], from, batchId });
  await noteUnitFacts(tx, staged, batchId);
  await noteComponents(tx, table, batchId);
}
