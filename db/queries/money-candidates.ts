import { type SQL, sql } from "drizzle-orm";
import { type CoverReach, coverReach, forever } from "@/lib/claims/leaks/cover-reach";
import { causeKeys, causes } from "@/lib/domain/cause";
import type { Reader } from "../database-types";
import { jobs } from "../schema/jobs";
import { type JobRow, jobColumnsOfCounts } from "./job-rows";
import { inScope, type UnitScope } from "./money-units";
import { loadPlainRows } from "./plain-rows";
import type { StoredPolicy } from "./policies";

/**
 * Closed jobs of these units that could be covered. What is left out never can be: its cause is one that no claim is
 * made of, or its day lies beyond every term counted at its longest from the latest day of the unit, with all days of
 * earlier repairs added.
 * Checked: tests/db/money/unclaimed-work.test.ts, against judging every job.
 * @param policies  under which a job may be covered; every closed job where absent
 */
export async function loadCandidates(
  db: Reader,
  scope: UnitScope,
  policies: readonly StoredPolicy[] | undefined,
): Promise<JobRow[]> {
  const rows = (tail: SQL) => loadPlainRows(db, jobs, tail, { without: jobColumnsOfCounts });
  if (policies === undefined) return await rows(sql`where ${inScope(sql`t.unit_id`, scope)} and t.status = 'closed'`);
  const makers = await db.rows<{ maker_id: number }>(sql`select maker_id from makers`);
  const reaches = makers.map(({ maker_id: makerId }) => {
    const bearing = policies.filter((each) => each.makerId === makerId || each.makerId === null);
    return { makerId, reach: coverReach(bearing.map(({ policy }) => policy)) };
  });
  if (reaches.length === 0) return [];
  // Told of both tables: the planner does not carry a range over from one to the other, and would read all units.
  const closed = sql`${inScope(sql`t.unit_id`, scope)} and ${inScope(sql`u.unit_id`, scope)} and t.status = 'closed'`;
  return await rows(sql`
    join units u using (unit_id) ${reachOfJob(reaches)} where ${closed} and ${mayBeCovered(reaches, policies, scope)}`);
}

type Reaches = readonly { readonly makerId: number; readonly reach: CoverReach }[];

/** How far cover of the job's maker and component reaches, and how late after its unit's latest day the job was. */
function reachOfJob(reaches: Reaches): SQL {
  const ofMakers = reaches.map(
    ({ makerId, reach: { otherDays, repairDays } }) =>
      sql`(${makerId}::integer, ${otherDays}::integer, ${repairDays}::integer)`,
  );
  const ofComponents = reaches.flatMap(({ makerId, reach }) =>
    [...reach.days].map(([component, days]) => sql`(${makerId}::integer, ${component}::text, ${days}::integer)`),
  );
  const components =
    ofComponents.length === 0
      ? sql`(select null::integer, null::text, null::integer where false)`
      : sql`(values ${sql.join(ofComponents, sql`, `)})`;
  return sql`
    join (values ${sql.join(ofMakers, sql`, `)}) m (maker_id, other_days, repair_days) on m.maker_id = u.maker_id
    left join ${components} c (maker_id, component, days) on c.maker_id = u.maker_id and c.component = t.component
    cross join lateral (select coalesce(c.days, m.other_days) as days,
      t.failed_on - greatest(u.sold_on, u.delivered_on, u.installed_on, u.occupied_on, u.registered_on, u.shipped_on, u.made_until) as late) r`;
}

function mayBeCovered(reaches: Reaches, policies: readonly StoredPolicy[], scope: UnitScope): SQL {
  const paysDiagnosis = policies.some(({ policy }) => policy.pay.diagnosis.kind === "flat");
  const claimable = causeKeys.filter(
    (cause) => causes[cause].kind === "component" || (paysDiagnosis && cause === "no_fault_found"),
  );
  const papers = ["unit_facts", "repair_spans"].map(
    (table) => sql`exists (select from ${sql.identifier(table)} f where f.unit_id = t.unit_id)`,
  );
  const may = [
    sql`r.days >= ${forever}`,
    sql`r.late <= r.days`,
    ...campaigns(reaches),
    ...papers,
    underContract(policies, scope),
    repairedUnderCover(reaches, scope),
  ];
  return sql`t.cause = any(${sql.param(claimable)}::text[]) and (${sql.join(may, sql` or `)})`;
}

/** A contract pays nothing before the first day of its paper, nor after the last unless its terms stand still in between. */
function underContract(policies: readonly StoredPolicy[], scope: UnitScope): SQL {
  const standsStill = policies.some(({ policy }) => policy.payer.kind === "contract" && policy.tolling);
  const ends = standsStill ? sql`true` : sql`f.ends_on >= t.failed_on`;
  const any = sql`t.unit_id in (select f.unit_id from contracts f where ${inScope(sql`f.unit_id`, scope)})`;
  return sql`(${any} and exists (select from contracts f where f.unit_id = t.unit_id and f.starts_on <= t.completed_on and ${ends}))`;
}

/**
 * Repairs on the payer's account keep a term running or begin one of their own. Of most units no such job is on file, so
 * that is asked once for all of them, and of the others job by job.
 */
function repairedUnderCover(reaches: Reaches, scope: UnitScope): SQL {
  const beginsAnew = reaches.some(({ reach }) => reach.repairDays >= forever);
  const onAccount = sql`e.payer in ('maker', 'campaign') and e.cause = 'component'`;
  const counts = beginsAnew ? sql`(m.repair_days >= ${forever} or (${onAccount}))` : onAccount;
  const any = sql`t.unit_id in (select e.unit_id from jobs e where ${inScope(sql`e.unit_id`, scope)} and e.status = 'closed' and ${beginsAnew ? sql`true` : onAccount})`;
  return sql`(${any} and exists (select from jobs e where e.unit_id = t.unit_id and e.job_id <> t.job_id and e.status = 'closed'
    and e.completed_on <= t.completed_on and ${counts} and (m.repair_days >= ${forever} or t.failed_on - e.completed_on <= m.repair_days
      or r.late <= r.days + (select coalesce(sum(s.completed_on - s.requested_on + 1), 0) from jobs s where s.unit_id = t.unit_id and s.status = 'closed'))))`;
}

/** Serials compare letter by letter in the database too. */
function campaigns(reaches: Reaches): readonly SQL[] {
  return reaches.flatMap(({ makerId, reach }) =>
    reach.campaigns.map(
      ({ component, from, to }) =>
        sql`(u.maker_id = ${makerId} and t.component = ${component} and u.serial_normalised collate "C" between ${from} and ${to})`,
    ),
  );
}
