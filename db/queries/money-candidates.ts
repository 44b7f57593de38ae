import { type SQL, sql } from "drizzle-orm";
import { type CoverReach, coverReach, forever } from "@/lib/claims/leaks/cover-reach";
import { causeKeys, causes } from "@/lib/domain/cause";
import type { StoredPolicy } from "./policies";

/**
 * A condition on jobs `j` with units `u` that is true for every job that could be covered. What it leaves out never
 * can be: its cause is one that no claim is made of, or its day lies beyond every term counted at its longest from the
 * latest day of the unit, with all days of earlier repairs added.
 * Checked: tests/db/unclaimed-work.test.ts, against judging every job.
 */
export function mayBeCovered(makerIds: readonly number[], policies: readonly StoredPolicy[]): SQL {
  const reaches = makerIds.map((makerId) => {
    const bearing = policies.filter((each) => each.makerId === makerId || each.makerId === null);
    return { makerId, reach: coverReach(bearing.map(({ policy }) => policy)) };
  });
  const paysDiagnosis = policies.some(({ policy }) => policy.pay.diagnosis.kind === "flat");
  const claimable = causeKeys.filter(
    (cause) => causes[cause].kind === "component" || (paysDiagnosis && cause === "no_fault_found"),
  );
  const days = caseOf(reaches, daysByComponent);
  const repairDays = caseOf(reaches, (reach) => sql`${reach.repairDays}::integer`);
  const late = sql`j.failed_on - greatest(u.sold_on, u.delivered_on, u.installed_on, u.occupied_on, u.registered_on, u.shipped_on, u.made_until)`;
  const papers = ["contracts", "unit_facts", "repair_spans"].map(
    (table) => sql`exists (select from ${sql.identifier(table)} f where f.unit_id = j.unit_id)`,
  );
  // Repairs on the payer's account keep a term running or begin one of their own.
  const repaired = sql`exists (select from jobs e where e.unit_id = j.unit_id and e.job_id <> j.job_id and e.status = 'closed'
    and e.completed_on <= j.completed_on and (${repairDays} >= ${forever} or (e.payer in ('maker', 'campaign') and e.cause = 'component'
      and (j.failed_on - e.completed_on <= ${repairDays} or ${late} <= ${days} + (
        select coalesce(sum(s.completed_on - s.requested_on + 1), 0) from jobs s where s.unit_id = j.unit_id and s.status = 'closed')))))`;
  const may = [sql`${days} >= ${forever}`, sql`${late} <= ${days}`, ...campaigns(reaches), ...papers, repaired];
  return sql`j.cause = any(${sql.param(claimable)}::text[]) and (${sql.join(may, sql` or `)})`;
}

function daysByComponent({ otherDays, days }: CoverReach): SQL {
  const others = sql`${otherDays}::integer`;
  if (days.size === 0) return others;
  const whens = [...days].map(([component, to]) => sql`when ${component} then ${to}::integer `);
  return sql`case j.component ${sql.join(whens, sql``)} else ${others} end`;
}

type Reaches = readonly { readonly makerId: number; readonly reach: CoverReach }[];

/** A maker without any cover reaches nowhere: 0 days from the unit's day is taken for a miss by a day before it. */
function caseOf(reaches: Reaches, of: (reach: CoverReach) => SQL): SQL {
  if (reaches.length === 0) return sql`-1`;
  const whens = reaches.map(({ makerId, reach }) => sql`when ${makerId}::integer then ${of(reach)} `);
  return sql`(case u.maker_id ${sql.join(whens, sql``)} else -1 end)`;
}

/** Serials compare letter by letter in the database too. */
function campaigns(reaches: Reaches): readonly SQL[] {
  return reaches.flatMap(({ makerId, reach }) =>
    reach.campaigns.map(
      ({ component, from, to }) =>
        sql`(u.maker_id = ${makerId} and j.component = ${component} and u.serial_normalised collate "C" between ${from} and ${to})`,
    ),
  );
}
