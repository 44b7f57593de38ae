import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { ClaimState } from "@/lib/claims/life/claim-standing";
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
}

/** Parts that may go are listed for so long, so that the list is of what is still on the shelf. Own choice, no source. */
export const listedDays = 60;

/** Failed parts that must be kept, the first to be let go on top; and those that may go since not long ago. */
export async function loadHeldParts(db: Reader, today: Day): Promise<HeldPart[]> {
  const rows = await db.rows<Row>(sql`
    select c.claim_number, l.line, c.payer, c.state, m.number as model, u.serial, j.job_number, j.completed_on::text, l.part_number, l.description,
      l.quantity, c.keep_part_until::text as keep_until
    from claims c join claim_lines l using (unit_id, claim_id) join jobs j using (unit_id, job_id) join units u using (unit_id) join models m using (model_id)
    where l.pay_item = 'parts' and c.submission is not null and c.state <> 'withdrawn' and (c.state = 'in audit'
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
  }));
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
};
