import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { ClaimState } from "@/lib/claims/life/claim-standing";
import type { FateEntry, PartFate } from "@/lib/claims/recovery/part-fate";
import { type PartHold, partHold } from "@/lib/claims/recovery/part-hold";
import type { Reader } from "../database-types";

/** A failed part of a claim that was sent, with what its tag says. */
export interface HeldPart {
  readonly claimNumber: string;
  readonly line: number;
  readonly payer: string;
  readonly model: string;
  readonly serial: string | undefined;
  readonly jobNumber: string;
  readonly completedOn: Day;
  readonly partNumber: string | undefined;
  readonly description: string;
  readonly quantity: number;
  readonly hold: PartHold;
  /** Where it went; undefined while it is on the shelf. */
  readonly gone: FateEntry | undefined;
}

/** Parts that may go, or are gone, are listed for so long, so that the list is of what matters now. Own choice, no source. */
export const listedDays = 60;

/** Failed parts that must be kept, the first to be let go on top; those that may go, and those that went, since not long ago. */
export async function loadHeldParts(db: Reader, today: Day): Promise<HeldPart[]> {
  const rows = await db.rows<Row>(sql`
    select c.claim_number, l.line, c.payer, c.state, m.number as model, u.serial, j.job_number, j.completed_on::text, l.part_number, l.description,
      l.quantity, c.keep_part_until::text as keep_until, f.fate, f.on_day::text, f.tag, f.by, f.reason
    from claims c join claim_lines l using (unit_id, claim_id) join jobs j using (unit_id, job_id) join units u using (unit_id) join models m using (model_id)
    left join lateral (select * from part_fates f where f.unit_id = l.unit_id and f.claim_id = l.claim_id and f.line = l.line order by entry desc limit 1) f
      on f.fate <> 'on shelf'
    where (f.fate is null or f.on_day >= ${today}::date - ${listedDays}::integer) and l.pay_item = 'parts' and c.submission is not null and c.state <> 'withdrawn' and (c.state = 'in audit' or f.fate is not null
      or c.keep_part_until >= ${today}::date - ${listedDays}::integer or (c.keep_part_until is null and coalesce(c.answered_on, c.last_sent_on) >= ${today}::date - 365))
    order by c.keep_part_until nulls last, c.claim_number, l.line limit 2000`);
  return rows.map((row) => ({
    claimNumber: row.claim_number,
    line: row.line,
    payer: row.payer,
    model: row.model,
    serial: row.serial ?? undefined,
    jobNumber: row.job_number,
    completedOn: row.completed_on,
    partNumber: row.part_number ?? undefined,
    description: row.description,
    quantity: row.quantity,
    hold: partHold({ state: row.state, keepUntil: row.keep_until ?? undefined }, today),
    gone: goneOf(row),
  }));
}

function goneOf({ fate, on_day, tag, by, reason }: Row): FateEntry | undefined {
  if (fate === null || on_day === null) return undefined;
  return { fate, on: on_day, tag: tag ?? "", by: by ?? "", reason: reason ?? "" };
}

type Row = {
  claim_number: string;
  line: number;
  payer: string;
  state: ClaimState;
  model: string;
  serial: string | null;
  job_number: string;
  completed_on: Day;
  part_number: string | null;
  description: string;
  quantity: number;
  keep_until: Day | null;
  fate: PartFate | null;
  on_day: Day | null;
  tag: string | null;
  by: string | null;
  reason: string | null;
};
