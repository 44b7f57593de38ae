import type { Transaction } from "@/db/database-types";
import { jobKey } from "../kinds/job-keys";
import { noteWords } from "../kinds/words-in-use";
import { newRows } from "../staging/merge-staged";
import { rowsOf, run } from "../staging/run";
import { any, type FirstLoad } from "./first-load";
import { noteMade, noteUsedWithMade } from "./made-rows";

const wordsOf = (table: string) => `${table}_words`;
const ownJob = "join jobs j on j.job_id = s.job_id";

/** Part lines of a large file while none is on file. Each is of a job that is, and has its number; none takes another back. */
export const firstPartLines: FirstLoad = {
  derived: [jobKey, "unit_id bigint", "joins_from bigint"],
  undo: ["drop column job_id"],
  async agree(tx, { table, beside }) {
    if (beside !== undefined || (await any(tx, `select from ${table} where readable and (line is null or returned)`)))
      return false;
    if (await any(tx, `select from ${table} where readable group by job_id, line having count(*) > 1`)) return false;
    await run(tx, gatherWords(table));
    return (await allHaveJobs(tx, table)) && !(await any(tx, wrongWords(table)));
  },
  async store(tx, staged, kind, batchId) {
    await staged.filling.insert([newRows(staged, kind, { batchId, found: { unit_id: "j.unit_id" }, join: ownJob })]);
    const key = ["unit_id", "job_id", "line"];
    const numbered = (rows: string) => `select *, (row_number() over ())::integer as row from ${rows}`;
    await noteMade(tx, { table: "part_lines", key, from: numbered("part_lines"), batchId });
    await noteUsedWithMade(tx, { table: "jobs", columns: 2, made: "part_lines", batchId });
    await noteUsedWithMade(tx, { table: "units", columns: 1, made: "part_lines", batchId });
    await noteWords(tx, {
      rows: `select component, kind from ${wordsOf(staged.table)} where component is not null`,
      batchId,
    });
  },
  models: () => "select distinct model_id as id from units where unit_id in (select unit_id from part_lines)",
};

/** The components beside the kinds of appliance on which they were fitted, and how many rows found their jobs. */
function gatherWords(table: string): string {
  return `create temporary table ${wordsOf(table)} on commit drop as
    select s.component, m.product_type as kind, count(*) as rows, bool_and(j.job_number = s.job_number) as same_number
    from ${table} s ${ownJob} join units u on u.unit_id = j.unit_id join models m on m.model_id = u.model_id where s.readable group by 1, 2`;
}

async function allHaveJobs(tx: Transaction, table: string): Promise<boolean> {
  const [found] = await rowsOf<{ all: boolean }>(
    tx,
    `select (select count(*) from ${table} where readable) = coalesce(sum(rows), 0) and bool_and(same_number) as all from ${wordsOf(table)}`,
  );
  return found?.all === true;
}

function wrongWords(table: string): string {
  return `select from ${wordsOf(table)} w where w.component is not null
    and not exists (select from component_uses u where u.component = w.component and u.product_type = w.kind)`;
}
