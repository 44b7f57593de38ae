import type { Transaction } from "@/db/database-types";
import { isFirst, rewriteStaged } from "../bulk/rewrite-staged";
import { claimSent } from "../joining/claim-sent";
import { flagRows } from "../staging/flag-rows";
import { run } from "../staging/run";
import type { Staged } from "../staging/staged-kind";
import { contradictingTypes, sameModel, serialsOfOtherModels, usualTypes } from "./models-of-rows";
import { settleNeverCompleted } from "./never-completed";
import { serialsOfOtherKinds, spreadKinds } from "./spread-kinds";

/**
 * Finds the unit of each staged job: by its serial, or, where the row has none, the unit on which the job is on file,
 * or a unit of its own. A job that is on file without a serial joins the unit whose serial the row gives. Also whether that unit is stored, and which kind of appliance it is.
 */
export async function resolveJobs(tx: Transaction, staged: Staged): Promise<void> {
  const { table } = staged;
  if (!((await isFirst(tx, staged, "jobs")) && (await resolveFirstJobs(tx, staged))))
    await resolveAmongStored(tx, table);
  await settleNeverCompleted(tx, staged);
  await spreadKinds(tx, staged);
}

async function resolveAmongStored(tx: Transaction, table: string): Promise<void> {
  await run(
    tx,
    `update ${table} s set unit_id = r.unit_id, unit_known = r.known, kind_of_model = r.kind
     from (
       select s.row, coalesce(stored.unit_id, s.given_unit_id) as unit_id, u.unit_id is not null as known,
              coalesce(um.product_type, m.product_type, s.product_type, f.product_type) as kind
       from ${table} s
       left join jobs stored on stored.job_number = s.job_number and s.serial_normalised is null
       left join units u on u.unit_id = coalesce(stored.unit_id, s.given_unit_id)
       left join models um on um.model_id = u.model_id
       left join makers k on k.normalised = s.maker_n
       left join models m on m.maker_id = k.maker_id and m.normalised = s.model_n
       left join ${usualTypes(table)} f on f.maker_n = s.maker_n and f.model_n = s.model_n
       where s.readable) r
     where r.row = s.row`,
  );
  await run(
    tx,
    `update ${table} s set joins_from = j.unit_id from jobs j join units u using (unit_id)
     where s.readable and s.serial_normalised is not null and not u.identified and j.job_number = s.job_number and j.unit_id <> s.unit_id`,
  );
}

/** The same where no job is on file yet: then each is new, as far as this can tell. */
async function resolveFirstJobs(tx: Transaction, staged: Staged): Promise<boolean> {
  const readable = (value: string) => `case when s.readable then ${value} end`;
  return await rewriteStaged(tx, staged.table, {
    set: {
      unit_id: readable("s.given_unit_id"),
      unit_known: readable("u.unit_id is not null"),
      kind_of_model: readable("coalesce(um.product_type, m.product_type, s.product_type, f.product_type)"),
      fate: readable("'new'"),
    },
    joins: `left join units u on u.unit_id = s.given_unit_id
      left join models um on um.model_id = u.model_id
      left join makers k on k.normalised = s.maker_n
      left join models m on m.maker_id = k.maker_id and m.normalised = s.model_n
      left join ${usualTypes(staged.table)} f on f.maker_n = s.maker_n and f.model_n = s.model_n`,
  });
}

export async function checkJobs(tx: Transaction, staged: Staged): Promise<void> {
  const { table, present } = staged;
  await flagRows(tx, staged, serialsOfOtherModels(table));
  await flagRows(tx, staged, contradictingTypes(table));
  await flagRows(tx, staged, serialsOfOtherKinds(table));
  for (const select of [
    unknownModels(table),
    jobsOfOtherModels(table),
    jobsOfOtherUnits(table),
    jobsOfSentClaims(table),
    wordsOfOtherKinds(table, "component"),
    wordsOfOtherKinds(table, "symptom"),
    againstStoredDays(present, table),
  ]) {
    await flagRows(tx, staged, select);
  }
}

function unknownModels(table: string): string {
  return `select s.row, 'model', case when starts_with(s.model_n, '~') then '' else s.model end,
            case when starts_with(s.model_n, '~') then 'is blank' else 'is not a model of ' || s.maker || ' on file' end || ', and the row does not say which kind of appliance it is',
            'Correct the maker or the model, or fill in product_type.'
     from ${table} s where s.readable and s.kind_of_model is null`;
}

/** A row must agree with the model of the unit on which its job is on file, also where it joins another unit. */
function jobsOfOtherModels(table: string): string {
  return `select s.row, 'model', s.model, 'is not the model of this job on file, which is ' || k.name || ' ' || m.number, 'Correct the model or the job number.'
     from ${table} s join units u on u.unit_id = coalesce(s.joins_from, s.unit_id) join models m using (model_id) join makers k on k.maker_id = m.maker_id
     where s.readable and (s.serial_normalised is null or s.joins_from is not null) and not (k.normalised = s.maker_n and ${sameModel("s.model_n", "m.normalised")})`;
}

/** One job number names one job; nobody but a person can tell which of two rows that give it two units is right. */
function jobsOfOtherUnits(table: string): string {
  const mixed = `job_id in (select job_id from ${table} where readable group by job_id having min(unit_id) <> max(unit_id))`;
  return `select s.row, 'job_number', s.job_number,
            'is on file for serial ' || u.serial || '; this row says ' || coalesce(s.serial, 'none'), 'Correct the job number or the serial.'
     from ${table} s join jobs j on j.job_number = s.job_number join units u on u.unit_id = j.unit_id
     where s.readable and u.identified and j.unit_id <> s.unit_id
     union all
     select s.row, 'job_number', s.job_number, 'is the number of the job in row ' || case when s.unit_id <> s.first_unit then s.first_row else s.other_row end || ', which names another unit',
       'Correct the job number or the serial.'
     from (select f.*, min(case when unit_id <> first_unit then row end) over (partition by job_id) as other_row
           from (select row, job_id, job_number, unit_id, first_value(row) over named as first_row, first_value(unit_id) over named as first_unit
                 from ${table} where readable and ${mixed} window named as (partition by job_id order by row)) f) s`;
}

/** What was sent names the unit as it was; it does not move under a claim that somebody is looking at. */
function jobsOfSentClaims(table: string): string {
  return `select s.row, 'serial', s.serial, 'comes late: the job is on file without a serial, and a claim on it was sent', 'Withdraw that claim, or leave the serial blank here.'
     from ${table} s where s.readable and s.joins_from is not null and ${claimSent("s.joins_from", "s.job_id")}`;
}

/** A component or symptom that this kind of appliance does not have would be divided by the wrong units. */
function wordsOfOtherKinds(table: string, word: "component" | "symptom"): string {
  return `select s.row, '${word}', s.${word}, 'is not a ${word} of the kind ' || s.kind_of_model,
            'Correct the ${word} or the model${word === "component" ? ", or load a components.csv that gives this kind the component" : ""}.'
     from ${table} s where s.readable and s.${word} is not null and s.kind_of_model is not null
       and not exists (select from ${word}_uses w where w.${word} = s.${word} and w.product_type = s.kind_of_model)`;
}

/** A file without some of the columns must not contradict the days that are stored. */
function againstStoredDays(present: ReadonlySet<string>, table: string): string {
  const of = (column: string) => `${present.has(column) ? "s" : "t"}.${column}`;
  const pair = (earlier: string, later: string) =>
    `select s.row, 'job_number', s.job_number, 'would have ${later} ' || ${of(later)} || ' before ${earlier} ' || ${of(earlier)}, 'Give both days in this file.'
     from ${table} s join jobs t on t.unit_id = coalesce(s.joins_from, s.unit_id) and t.job_id = s.job_id where s.readable and ${of(later)} < ${of(earlier)}`;
  return [
    pair("requested_on", "first_visit_on"),
    pair("requested_on", "completed_on"),
    pair("first_visit_on", "completed_on"),
  ].join(" union all ");
}
