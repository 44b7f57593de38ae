import { type SQL, sql } from "drizzle-orm";
import type { JobRecord } from "@/lib/domain/job";
import type { Reader } from "../database-types";
import { attachments, partLines, readings } from "../schema/jobs";
import { attachmentOf, judgedReadingOf, partLineOf, readingColumnsOfPapers } from "./job-rows";
import { inScope, lookedUp, type UnitScope } from "./money-units";
import { loadPlainRows } from "./plain-rows";

export interface JobKey {
  readonly unitId: string;
  readonly jobId: string;
}

export type Under = Pick<JobRecord, "partLines" | "readings" | "attachments">;

/**
 * What lies under many jobs at once, as far as judging looks at it; the function handed back picks what is one's.
 * @param scope  of which all these jobs are
 */
export async function loadUnderJobs(
  db: Reader,
  of: readonly JobKey[],
  scope: UnitScope,
): Promise<(job: JobKey) => Under> {
  const these = sql`where ${among(of, scope)}`;
  const parts = byJob(
    await loadPlainRows(db, partLines, sql`${these} order by t.line`, { without: ["batchId"] }),
    partLineOf,
  );
  const taken = byJob(
    await loadPlainRows(db, readings, sql`${these} order by t.number`, { without: readingColumnsOfPapers }),
    judgedReadingOf,
  );
  const inOrder = sql`${these} order by t.subject, t.attachment_id`;
  const papers = byJob(
    await loadPlainRows(db, attachments, inOrder, {
      without: ["content", "batchId", "receivedSha256", "width", "height"],
    }),
    attachmentOf,
  );
  return (job) => ({ partLines: parts(job), readings: taken(job), attachments: papers(job) });
}

/** Keeps rows of these jobs, whose units lie in the scope. */
export function among(of: readonly JobKey[], scope: UnitScope): SQL {
  return sql`${inScope(sql`t.unit_id`, scope)} and ${lookedUp(
    sql`t.job_id`,
    of.map(({ jobId }) => jobId),
  )}`;
}

function byJob<Row extends JobKey, Found>(rows: readonly Row[], found: (row: Row) => Found) {
  const groups = new Map<string, Found[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [found(row)]);
    else group.push(found(row));
  }
  const none: readonly Found[] = [];
  return (job: JobKey): readonly Found[] => groups.get(keyOf(job)) ?? none;
}

export function keyOf({ unitId, jobId }: JobKey): string {
  return `${unitId} ${jobId}`;
}
