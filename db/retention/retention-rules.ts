import { type SQL, sql } from "drizzle-orm";

export interface RetentionRule {
  readonly kind: string;
  /** What it is, as a list names it. */
  readonly what: string;
  /** Unless the company says otherwise. Our own choices, except where a reason stands beside it. */
  readonly usualDays: number;
  /** Rows whose time is over before `cutoff`, as a subquery of their own columns and `bytes`. */
  readonly due: (cutoff: SQL) => SQL;
  /** Removes them; every row that it returns is one removed. */
  readonly remove: (cutoff: SQL) => SQL;
}

const closedClaims = sql`('paid', 'written off', 'withdrawn')`;

/** Photos live as long as a claim on their job can be asked about; seven years is how long many places want business papers kept. */
const photosDue = (cutoff: SQL) => sql`
  attachments a where exists (select from jobs j where j.unit_id = a.unit_id and j.job_id = a.job_id and j.completed_on < (${cutoff})::date)
    and not exists (select from claims c where c.unit_id = a.unit_id and c.job_id = a.job_id and c.state not in ${closedClaims})`;

/** What is removed after a while by itself. Nothing here is in any rate, claim or count. */
export const retentionRules: readonly RetentionRule[] = [
  {
    kind: "drafts",
    what: "Files that were chosen and never added, with what was said of them",
    usualDays: 30,
    due: (cutoff) => sql`select file_bytes as bytes from file_drafts where updated_at < ${cutoff}`,
    remove: (cutoff) => sql`delete from file_drafts where updated_at < ${cutoff} returning draft_id`,
  },
  {
    kind: "left-out rows",
    what: "Words of rows of files that were no record, or that somebody left out",
    usualDays: 90,
    due: (cutoff) => sql`
      select octet_length(h.cells::text) as bytes from held_rows h join batches b using (batch_id)
      where h.state in ('refused', 'left_out') and h.cells <> '{}' and b.added_at < ${cutoff}`,
    remove: (cutoff) => sql`
      update held_rows h set cells = '{}', source = null, corrections = '{}' from batches b
      where b.batch_id = h.batch_id and h.state in ('refused', 'left_out') and h.cells <> '{}' and b.added_at < ${cutoff} returning h.row`,
  },
  {
    kind: "photos taken off",
    what: "Photos and papers that were taken off a job, until when that can be undone",
    usualDays: 30,
    due: (cutoff) => sql`select octet_length(content) as bytes from removed_attachments where removed_at < ${cutoff}`,
    remove: (cutoff) => sql`delete from removed_attachments where removed_at < ${cutoff} returning attachment_id`,
  },
  {
    kind: "answers",
    what: "Answers kept for programs that ask the same again, after they expired",
    usualDays: 7, // as far as a clock is believed that is suddenly ahead: none goes by a mistake of it
    due: (cutoff) =>
      sql`select coalesce(octet_length(answer::text), 0) as bytes from idempotency_keys where expires_at < ${cutoff}`,
    remove: (cutoff) => sql`delete from idempotency_keys where expires_at < ${cutoff} returning key`,
  },
  {
    kind: "sign-ins",
    what: "Who signed in or tried to, when and from which address of the network",
    usualDays: 365,
    due: (cutoff) => sql`select 60 as bytes from sign_ins where at < ${cutoff}`,
    remove: (cutoff) => sql`delete from sign_ins where at < ${cutoff} returning sign_in_id`,
  },
  {
    kind: "sessions",
    what: "Sessions that are over, with the address of the network and the browser that they came from",
    usualDays: 30,
    due: (cutoff) => sql`select 300 as bytes from sessions where expires_at < ${cutoff}`,
    remove: (cutoff) => sql`delete from sessions where expires_at < ${cutoff} returning id`,
  },
  {
    kind: "photos",
    what: "Photos and papers of jobs whose claims are all closed, or that never had one",
    usualDays: 2557,
    due: (cutoff) => sql`select a.stored_bytes as bytes from ${photosDue(cutoff)}`,
    remove: (cutoff) => sql`delete from ${photosDue(cutoff)} returning a.attachment_id`,
  },
];
