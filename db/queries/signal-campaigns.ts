import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Campaign } from "@/lib/domain/policy-campaign";
import type { CellKey } from "@/lib/signals/signal-record";
import type { Reader } from "../database-types";
import { unitsOfCell } from "./signal-machines";

export interface CampaignOfSignal {
  readonly campaign: Campaign;
  /** Units of the signal in service whose serials it names. */
  readonly units: number;
}

/** Campaigns of the maker on this component, in force on a day, with how many of the signal's units they name. */
export async function loadCampaignsOfSignal(db: Reader, cell: CellKey, asOf: Day): Promise<CampaignOfSignal[]> {
  if (cell.kind !== "component") return [];
  const rows = await db.rows<{ campaign: Campaign; units: number }>(sql`
    with campaigns as (
      select distinct on (c.campaign ->> 'key') c.campaign from policies p join makers k using (maker_id)
      cross join lateral jsonb_array_elements(coalesce(p.document -> 'campaigns', '[]'::jsonb)) as c(campaign)
      where k.name = ${cell.maker} and c.campaign ->> 'component' = ${cell.word}
        and coalesce(c.campaign ->> 'startsOn', '0001-01-01') <= ${asOf} and coalesce(c.campaign ->> 'endsOn', '9999-12-31') >= ${asOf}
      order by c.campaign ->> 'key', p.policy_id desc)
    select campaign, (select count(*)::int from ${unitsOfCell(cell)} and (u.retired_on is null or u.retired_on > ${asOf}) and exists (
      select from jsonb_array_elements(campaign -> 'serials') r where length(u.serial_normalised) = length(r ->> 'from')
        and u.serial_normalised collate "C" >= r ->> 'from' and u.serial_normalised collate "C" <= r ->> 'to')) as units
    from campaigns`);
  return rows;
}
