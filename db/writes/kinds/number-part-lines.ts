import type { Transaction } from "@/db/database-types";
import { rowsOf, run } from "../staging/run";
import type { Staged } from "../staging/staged-kind";

const content = [
  "part_number",
  "quantity",
  "unit_cost_cents",
  "invoice_number",
  "invoice_line",
  "description",
  "component",
  "role",
  "currency",
  "distributor",
  "invoiced_on",
];

/**
 * Numbers the lines that a file leaves without numbers by what they say, so that the same lines in another order get
 * the same numbers. A line that says what a stored one says gets its number; else a line of the same part on the same
 * invoice replaces the stored one; else it is a further line. Rows of the file that are equal word for word are one line.
 */
export async function numberPartLines(tx: Transaction, staged: Staged): Promise<void> {
  const { table } = staged;
  const [open] = await rowsOf<{ there: boolean }>(
    tx,
    `select exists (select from ${table} where readable and line is null) as there`,
  );
  if (open?.there !== true) return;
  const from = (column: string) => (column === "unit_cost_cents" ? "unit_cost" : column);
  const stated = content.filter((column) => staged.present.has(from(column)));
  const says = (alias: string) => `row(${stated.map((column) => `${alias}.${column}`).join(", ")})::text`;
  const invoice = (alias: string) =>
    stated.includes("invoice_number") ? `coalesce(${alias}.invoice_number, '')` : "''::text";
  const named = (alias: string) => `${alias}.part_number as part, ${invoice(alias)} as invoice`;
  const order = [...stated.map((column) => `l.${column}`), "l.twin"].join(", ");
  const wholeRow = staged.rows === undefined ? "s.cells::text" : "r.print";
  await run(tx, "set local enable_nestloop = off"); // how many lines share a job cannot be estimated, and a loop in a loop would take the square
  await run(
    tx,
    `with lines as (
       select s.row, s.job_id, coalesce(s.joins_from, s.unit_id) as unit_id, ${stated.map((column) => `s.${column}`).join(", ")}, ${says("s")} as says,
         dense_rank() over (partition by s.job_id, ${says("s")} order by ${wholeRow}) as twin, ${named("s")}
       from ${table} s ${staged.rows === undefined ? "" : `join ${staged.rows.table} r on r.row = s.row`} where s.readable and s.problems is null and s.line is null),
     stored as (
       select t.job_id, t.line, ${says("t")} as says, row_number() over (partition by t.job_id, ${says("t")} order by t.line) as twin, ${named("t")}
       from part_lines t where (t.unit_id, t.job_id) in (select unit_id, job_id from lines)),
     alike as (select l.row, p.line, l.job_id from lines l join stored p on p.job_id = l.job_id and p.says = l.says and p.twin = l.twin),
     left_lines as (
       select l.*, dense_rank() over (partition by l.job_id, l.part, l.invoice order by ${order}) as place from lines l where not exists (select from alike a where a.row = l.row)),
     left_stored as (
       select p.*, row_number() over (partition by p.job_id, p.part, p.invoice order by p.line) as place
       from stored p where not exists (select from alike a where a.job_id = p.job_id and a.line = p.line)),
     replaced as (
       select l.row, p.line from left_lines l join left_stored p on p.job_id = l.job_id and p.part = l.part and p.invoice = l.invoice and p.place = l.place),
     taken as (
       select job_id, max(line) as line from (
         select job_id, line from stored union all select job_id, line from ${table} where readable and line is not null) each group by job_id),
     further as (
       select l.row, coalesce(t.line, 0) + dense_rank() over (partition by l.job_id order by ${order}) as line
       from left_lines l left join taken t on t.job_id = l.job_id where not exists (select from replaced r where r.row = l.row))
     update ${table} s set line = n.line
     from (select row, line from alike union all select row, line from replaced union all select row, line from further) n where n.row = s.row`,
  );
  await run(tx, "set local enable_nestloop = on");
}
