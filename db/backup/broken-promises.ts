import type { Client } from "pg";

interface Promised {
  /** What is said when a row breaks it. */
  readonly broken: string;
  /** Finds the rows that break it. */
  readonly sql: string;
}

/** What must hold of the rows together and no constraint of one table can see; of the photos, every byte. */
const promises: readonly Promised[] = [
  {
    broken: "a load's rows do not add up to its file",
    sql: "select from batches where rows_total <> rows_new + rows_changed + rows_same + rows_held + rows_refused",
  },
  {
    broken: "a load keeps fewer rows aside than it says",
    sql: `select from batches b where state = 'added' and rows_held >
      (select count(*) from held_rows h where h.batch_id = b.batch_id and h.state <> 'refused')`,
  },
  {
    broken: "a claim was sent and what was sent is not kept",
    sql: `select from claim_events e where what = 'sent' and not exists (select from claim_submissions s
      where s.unit_id = e.unit_id and s.claim_id = e.claim_id and s.submission = e.submission
        and encode(sha256(s.content), 'hex') = e.sent_sha256)`,
  },
  {
    broken: "a photo or paper is not the one that was stored",
    sql: "select from attachments where encode(sha256(content), 'hex') <> stored_sha256",
  },
  {
    broken: "a job stands on a unit that is not on file",
    sql: "select from jobs j where not exists (select from units u where u.unit_id = j.unit_id)",
  },
  {
    broken: "a stock is not the sum of its movements",
    sql: `select from stock_levels l where array[on_hand, reserved] is distinct from
      (select array[sum(quantity), sum(reserved)]::integer[] from stock_movements m where m.part_key = l.part_key and m.place = l.place)`,
  },
  {
    broken: "money was posted from an answer that is not kept",
    sql: "select from remittance_postings p where not exists (select from remittances r where r.remittance_id = p.remittance_id)",
  },
];

/** The sentences of those that do not hold, in a database of this program's schema. */
export async function brokenPromises(client: Pick<Client, "query">): Promise<string[]> {
  const broken: string[] = [];
  for (const { broken: sentence, sql } of promises) {
    const found = await client.query(`${sql} limit 1`);
    if ((found.rowCount ?? 0) > 0) broken.push(sentence);
  }
  return broken;
}
