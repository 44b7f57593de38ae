import { type SQL, sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { CellKey } from "@/lib/signals/signal-record";
import type { Reader } from "../database-types";
import { carriesExposure, madeHalf, observedUnits } from "./signal-units";

/** Units of a cell: its kind of machine, maker, model and half-year of production. */
export function unitsOfCell(cell: CellKey): SQL {
  return sql`${observedUnits} join models m using (model_id) join makers k on k.maker_id = m.maker_id where ${isUnitOfCell(cell)}`;
}

/** Whether unit `u` of model `m` and maker `k`, observed from `o`, is one of the cell. */
export function isUnitOfCell({ productType, maker, model, madeHalf: half }: CellKey): SQL {
  const parts = [carriesExposure, sql`k.name = ${maker}`, sql`m.product_type = ${productType}`];
  if (model !== undefined) parts.push(sql`m.number = ${model}`);
  if (half !== undefined) parts.push(sql`coalesce(${madeHalf} = ${half}, false)`);
  return sql`(${sql.join(parts, sql` and `)})`;
}

/** The jobs that the cell counts. */
export function isCounted({ kind, word }: CellKey): SQL {
  switch (kind) {
    case "component":
      return sql`j.counted_as = 'failure' and j.component = ${word}`;
    case "fault_code":
      return sql`j.counted_as <> 'nothing' and exists (select from readings c where c.unit_id = j.unit_id and c.job_id = j.job_id
        and c.outcome = 'code' and c.word = ${word})`;
    case "symptom":
      return sql`j.counted_as <> 'nothing' and j.symptom = ${word}`;
  }
}

export interface AreaAtRisk {
  /** As the register has it; undefined where it has none. */
  readonly territory: string | undefined;
  readonly units: number;
  /** Of them, those that already failed this way. */
  readonly failed: number;
}

/** Units of the cell that were in service at the end of a day, by their owner's area. */
export async function loadAreasAtRisk(db: Reader, cell: CellKey, asOf: Day): Promise<AreaAtRisk[]> {
  const rows = await db.rows<{ territory: string | null; units: number; failed: number }>(sql`
    select u.territory, count(*)::int as units, count(*) filter (where exists (
      select from jobs j where j.unit_id = u.unit_id and ${isCounted(cell)} and j.completed_on <= ${asOf}))::int as failed
    from ${unitsOfCell(cell)} and u.in_service_on <= ${asOf} and (u.retired_on is null or u.retired_on > ${asOf})
    group by 1 order by 2 desc, 1`);
  return rows.map((row) => ({ ...row, territory: row.territory ?? undefined }));
}

export interface UnitAtRisk {
  readonly serial: string;
  readonly model: string;
  readonly madeFrom: Day | null;
  readonly madeUntil: Day | null;
  readonly inServiceOn: Day;
  readonly territory: string | null;
  readonly failed: number;
}

/** The units themselves; no owner is named, since none is on file. */
export async function loadUnitsAtRisk(db: Reader, cell: CellKey, asOf: Day): Promise<UnitAtRisk[]> {
  return await db.rows<UnitAtRisk & Record<string, unknown>>(sql`
    select u.serial, m.number as model, u.made_from as "madeFrom", u.made_until as "madeUntil", u.in_service_on as "inServiceOn", u.territory,
      (select count(*)::int from jobs j where j.unit_id = u.unit_id and ${isCounted(cell)} and j.completed_on <= ${asOf}) as failed
    from ${unitsOfCell(cell)} and u.in_service_on <= ${asOf} and (u.retired_on is null or u.retired_on > ${asOf})
    order by u.territory nulls last, u.serial`);
}
