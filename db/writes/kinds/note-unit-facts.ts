import type { Transaction } from "@/db/database-types";
import { run } from "../staging/run";
import type { Staged } from "../staging/staged-kind";

/** Notes of the cells of one row count from 1; these stand behind them. */
const firstPlace = 1000;

/**
 * A job's row may say when its unit was made, sold, delivered and installed. A unit that is on file keeps what is
 * there: where the row says otherwise, or more, that is noted with the load, so that a person can settle it.
 */
export async function noteUnitFacts(tx: Transaction, staged: Staged, batchId: number): Promise<void> {
  const facts = ["made", "sold_on", "delivered_on", "installed_on"].filter((fact) => staged.present.has(fact));
  if (facts.length === 0) return;
  const each = facts.map((fact, index) => {
    const [said, stored, differs] = fact === "made" ? made : day(fact);
    return `select s.row, ${firstPlace + index} as place, '${fact}' as fact, ${said} as said, ${stored} as stored, s.job_id, s.unit_id, u.in_register
      from ${staged.table} s join units u using (unit_id) where s.fate is not null and ${differs}`;
  });
  await run(
    tx,
    `insert into cell_notes (batch_id, row, place, source, "column", raw, taken, note, job_id, unit_id)
     select ${batchId}, row, place, fact, fact, said, '',
       case when stored is null then 'Not taken: the unit is on file without it. If it is right, say so in a register of units.'
            when in_register then 'Differs from the register, which says ' || stored || '. The register stands; correct it there if it is wrong.'
            else 'Differs from what is on file of this unit, ' || stored || '. That stands; a register of units can correct it.' end,
       job_id, unit_id
     from (${each.join(" union all ")}) each`,
  );
}

type Sql = readonly [said: string, stored: string, differs: string];

function day(column: string): Sql {
  return [
    `s.${column}::text`,
    `u.${column}::text`,
    `s.${column} is not null and s.${column} is distinct from u.${column}`,
  ];
}

const span = (of: string) =>
  `case when ${of}.made_from = ${of}.made_until then ${of}.made_from::text else ${of}.made_from || ' to ' || ${of}.made_until end`;

/** A month agrees with a day in it. */
const made: Sql = [
  span("s"),
  span("u"),
  "s.made_from is not null and (u.made_from is null or u.made_until < s.made_from or u.made_from > s.made_until)",
];
