import type { Transaction } from "@/db/database-types";
import { run } from "../staging/run";
import type { Staged } from "../staging/staged-kind";
import { factPlaces, type UnitFact, unitFacts } from "./unit-facts";

/**
 * A job's row may say when its unit was made, sold, delivered and installed. What is on file of the unit stands: where
 * the row says otherwise, or more than could be filled in, that is noted with the load, so that a person can settle it.
 */
export async function noteUnitFacts(tx: Transaction, staged: Staged, batchId: number): Promise<void> {
  const facts = unitFacts.filter(({ from }) => staged.present.has(from));
  if (facts.length === 0) return;
  const each = facts.map(
    (
      fact,
    ) => `select s.row, ${factPlaces[fact.from]} as place, '${fact.from}' as fact, ${fact.said("s")} as said, ${fact.said("u")} as stored, s.job_id, s.unit_id, u.in_register
      from ${staged.table} s join units u using (unit_id) where s.fate is not null and ${differs(fact)}`,
  );
  await run(
    tx,
    `insert into cell_notes (batch_id, row, place, source, "column", raw, taken, note, job_id, unit_id)
     select ${batchId}, row, place, fact, fact, said, '',
       case when stored is null then 'Not taken: rows of this unit say different things, or one that contradicts what is on file. A register of units can settle it.'
            when in_register then 'Differs from the register, which says ' || stored || '. The register stands; correct it there if it is wrong.'
            else 'Differs from what is on file of this unit, ' || stored || '. That stands; a register of units can correct it.' end,
       job_id, unit_id
     from (${each.join(" union all ")}) each`,
  );
}

/** A month agrees with a day in it. */
function differs({ from, columns: [first] }: UnitFact): string {
  return from === "made"
    ? "s.made_from is not null and (u.made_from is null or u.made_until < s.made_from or u.made_from > s.made_until)"
    : `s.${first} is not null and s.${first} is distinct from u.${first}`;
}
