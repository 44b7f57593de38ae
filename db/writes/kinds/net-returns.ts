import type { Transaction } from "@/db/database-types";
import { flagRows } from "../staging/flag-rows";
import { rowsOf, run } from "../staging/run";
import type { Staged } from "../staging/staged-kind";

/**
 * A line with a negative quantity takes back what another line of the same job, part and cost in this file has used:
 * that line is stored with what is left, and not at all where nothing is. Only lines of one file are set against each
 * other, since a return that came again by itself would take the part back twice. A return without its line is held.
 */
export async function netReturns(tx: Transaction, staged: Staged): Promise<void> {
  const { table, rows } = staged;
  const [found] = await rowsOf<{ any: boolean }>(
    tx,
    `select exists (select from ${table} where readable and returned) as any`,
  );
  if (found?.any !== true) return;
  const netted = `${table}_netted`;
  await run(tx, `create temporary table ${netted} on commit drop as ${nettedLines(table)}`);
  await flagRows(tx, staged, withoutLine(table, netted));
  await run(tx, `delete from ${netted} where problem is not null`);
  const of = `n.job_id = s.job_id and n.part_number = s.part_number and n.unit_cost_cents = s.unit_cost_cents and s.readable`;
  if (rows !== undefined)
    await run(
      tx,
      `update ${rows.table} r set notes = coalesce(r.notes, '[]'::jsonb) || jsonb_build_array(jsonb_build_object('source', 'quantity', 'column', 'quantity',
         'raw', case when s.returned then '-' else '' end || s.quantity, 'taken', case when s.returned then '' else n.remaining::text end,
         'note', case when s.returned then 'Returned: taken off the line of this part in row ' || n.line_row || '.'
           else n.taken_back || ' of ' || n.used || ' returned, by row ' || n.return_row || '.' end))
       from ${table} s join ${netted} n on ${of} where r.row = s.row`,
    );
  // Neither a return nor a line that was taken back whole is a line; where the row is nothing else, it is here already.
  const isNone = "(s.returned or n.remaining = 0)";
  await run(
    tx,
    `update ${table} s set readable = not ${isNone}, fate = case when ${isNone} ${rows === undefined ? "then 'same'" : "then null"} else s.fate end,
       quantity = case when s.returned then s.quantity else n.remaining end
     from ${netted} n where ${of}`,
  );
  await run(tx, `drop table ${netted}`);
}

/** Lines that are equal in content are one line, as everywhere. */
function nettedLines(table: string): string {
  const line = "job_id, part_number, unit_cost_cents";
  return `select ${line}, used, taken_back, used - taken_back as remaining, line_row, return_row,
      case when lines = 0 then 'takes back a part of which this file has no line at this cost'
        when lines > 1 then 'takes back a part of which the job has several lines at this cost'
        when taken_back > used then 'takes back more than the ' || used || ' of row ' || line_row
        when taken_back = used and on_file then 'takes back all of row ' || line_row || ', and that line is on file already' end as problem
    from (select ${line}, count(*) filter (where not returned) as lines, max(quantity) filter (where not returned) as used,
            coalesce(sum(quantity) filter (where returned), 0) as taken_back, min(row) filter (where not returned) as line_row, min(row) filter (where returned) as return_row,
            exists (select from part_lines t where t.job_id = l.job_id and t.part_number = l.part_number and t.unit_cost_cents = l.unit_cost_cents) as on_file
          from (select ${line}, returned, quantity, invoice_number, invoice_line, min(row) as row from ${table} where readable and problems is null
                group by ${line}, returned, quantity, invoice_number, invoice_line) l
          group by ${line} having bool_or(returned)) counted`;
}

function withoutLine(table: string, netted: string): string {
  return `select s.row, 'quantity', '-' || s.quantity, n.problem, case
      when n.problem like '%on file already' then 'Take back the load that brought that line, and add this file again.'
      when n.problem like '%no line%' then 'Load the file that holds both lines; or leave this row out, where the part was never entered as used.'
      else 'Correct the quantities so that they agree.' end
    from ${table} s join ${netted} n on n.job_id = s.job_id and n.part_number = s.part_number and n.unit_cost_cents = s.unit_cost_cents
    where s.readable and s.returned and n.problem is not null`;
}
