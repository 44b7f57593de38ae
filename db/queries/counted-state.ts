import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";

/**
 * Watched tables of which no rate, share, life or signal is made, so that money, stock and marks leave those figures alone.
 * A table that is watched later counts until it is named here.
 */
const ofNoFigure = [
  ...["claim_events", "remittances", "remittance_postings", "remittance_lines", "payer_wordings"],
  ...["stock_parts", "stock_movements", "part_order_events", "part_fates"],
  ...["sheet_versions", "own_ranges", "technician_asks", "technician_notes", "removed_attachments", "signal_marks"],
  ...["api_keys", "people", "invitations", "second_factors", "restore_drills", "program_runs", "retention_limits"],
] as const;

/**
 * Names the state of everything that figures of Repeats are made of: another one after every load, taking back, edit by
 * hand, closed job or setting, and the same one until then. It is the last link of the change log that tells of any of them,
 * and links are made in the order of commits, so what is read in the same transaction or later is of this state or a newer one.
 * Its hash is named with it, so that another database, or one brought back from a backup, is another state.
 * Checked: tests/db/kept-answers.test.ts, for each way in which a job can change.
 */
export async function loadCountedState(db: Reader): Promise<string> {
  const [last] = await db.rows<{ link: string }>(sql`
    select c.link || ' ' || left(c.sha256, 16) as link from change_chain c join change_log l using (change_id)
    where l.table_name <> all (array[${sql.join(
      ofNoFigure.map((name) => sql`${name}`),
      sql`, `,
    )}]::text[])
    order by c.link desc limit 1`);
  return last?.link ?? "none";
}
