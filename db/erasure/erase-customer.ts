import { randomBytes, randomUUID } from "node:crypto";
import { sql } from "drizzle-orm";
import type { Transaction } from "../database-types";
import { inTransaction } from "../in-transaction";
import { type ErasedJob, erasures } from "../schema/keeping";
import { dryTransaction } from "../writes/dry-transaction";
import { refreshUnclaimed } from "../writes/money/refresh-unclaimed";
import { intakeLock } from "../writes/store-import";
import { type ErasedPlace, eraseCells, findLocked } from "./erase-cells";
import { Eraser, printsOf } from "./word-prints";

export interface ErasureAsked {
  /** Names, numbers, addresses of the customer, as they are written in full. */
  readonly words: readonly string[];
  /** All jobs done for the customer. */
  readonly jobNumbers: readonly string[];
  readonly by: string;
  /** Why, without the customer's name: it stays. */
  readonly reason: string;
  readonly at: Date;
}

export interface Erased {
  readonly erasureId: string;
  readonly jobs: readonly ErasedJob[];
  readonly erased: readonly ErasedPlace[];
  readonly kept: readonly { readonly what: string; readonly why: string }[];
}

export type Erasure = Pick<
  typeof erasures.$inferSelect,
  "erasureId" | "at" | "by" | "reason" | "jobs" | "salt" | "prints"
>;

const limits = { timeoutSeconds: 3600 };
/** Papers that bear the customer's hand or name. */
const personalSubjects = sql`('signature', 'receipt')`;

/**
 * Forgets a customer: wherever somebody wrote the name, number or address, a mark stands instead; signatures and receipts
 * go. Units, jobs, readings, sums and with them every rate stay as they are. All or nothing, in one transaction.
 * @param dry  undoes it all, and says what would have come of it
 * @throws RangeError for a job that is not on file, or words that are too short to be told from others
 */
export async function eraseCustomer(asked: ErasureAsked, { dry }: { readonly dry: boolean }): Promise<Erased> {
  if (asked.by.trim() === "" || asked.reason.trim() === "") throw new RangeError("by, reason: both must be said");
  if (asked.words.length === 0) throw new RangeError("words: at least one name, number or address is needed");
  const salt = randomBytes(32).toString("hex");
  const prints = printsOf(asked.words, salt);
  const work = async (tx: Transaction): Promise<Erased> => {
    const jobs = await findJobs(tx, asked.jobNumbers);
    const { by, reason, at } = asked;
    return await carryOut(tx, { erasureId: randomUUID(), at: at.toISOString(), by, reason, jobs, salt, prints });
  };
  return dry ? await dryTransaction(work, limits) : await inTransaction(work, limits);
}

/** Does erasures again that the database has not heard of, as after a backup from before them was restored. @returns how many */
export async function repeatErasures(list: readonly Erasure[]): Promise<number> {
  let repeated = 0;
  for (const erasure of list) {
    await inTransaction(async (tx) => {
      const [known] = await tx.rows(sql`select from erasures where erasure_id = ${erasure.erasureId}`);
      if (known !== undefined) return;
      await carryOut(tx, erasure);
      repeated += 1;
    }, limits);
  }
  return repeated;
}

async function carryOut(tx: Transaction, erasure: Erasure): Promise<Erased> {
  await tx.execute(sql`select pg_advisory_xact_lock(${intakeLock})`);
  const { erasureId, jobs } = erasure;
  const eraser = new Eraser(erasure);
  const pictures = await removePictures(tx, jobs);
  const erased = [...pictures.erased, ...(await eraseCells(tx, eraser, jobs))];
  const kept = [...pictures.kept, ...(await findLocked(tx, eraser, jobs))];
  await tx.insert(erasures).values({ ...erasure, jobs: [...jobs], erased, kept });
  await refreshUnclaimed(tx, [...new Set(jobs.map(({ unitId }) => unitId))]);
  return { erasureId, jobs, erased, kept };
}

async function findJobs(tx: Transaction, numbers: readonly string[]): Promise<readonly ErasedJob[]> {
  const found = await tx.rows<ErasedJob & Record<string, unknown>>(sql`
    select unit_id::text as "unitId", job_id::text as "jobId", job_number as "jobNumber" from jobs where job_number = any(${sql.param([...numbers])})
    union select unit_id::text, job_id::text, job_number from open_jobs where job_number = any(${sql.param([...numbers])}) order by 3`);
  const missing = numbers.find((number) => !found.some(({ jobNumber }) => jobNumber === number));
  if (missing !== undefined) throw new RangeError(`jobNumbers: no job ${missing} is on file`);
  return found;
}

/** What was sent to a payer stays; of the rest nothing is kept, not even for undoing. */
async function removePictures(tx: Transaction, jobs: readonly ErasedJob[]): Promise<Pick<Erased, "erased" | "kept">> {
  const kept: { what: string; why: string }[] = [];
  let cells = 0;
  for (const { unitId, jobId, jobNumber } of jobs) {
    const sent = sql`exists (select from claims c join claim_submissions s using (unit_id, claim_id)
      where c.unit_id = a.unit_id and c.job_id = a.job_id and s.manifest @> jsonb_build_array(jsonb_build_object('sha256', a.stored_sha256)))`;
    const own = sql`a.unit_id = ${unitId} and a.job_id = ${jobId} and a.subject in ${personalSubjects}`;
    const held = await tx.rows<{ subject: string }>(sql`select a.subject from attachments a where ${own} and ${sent}`);
    for (const { subject } of held) {
      kept.push({
        what: `${subject} of job ${jobNumber}`,
        why: "It was sent to a payer with a claim and is kept with it.",
      });
    }
    cells += (await tx.rows(sql`delete from attachments a where ${own} and not ${sent} returning a.attachment_id`))
      .length;
    cells += (
      await tx.rows(
        sql`delete from removed_attachments where unit_id = ${unitId} and job_id = ${jobId} returning attachment_id`,
      )
    ).length;
  }
  return { erased: cells === 0 ? [] : [{ place: "attachments", cells }], kept };
}
