import { getTableColumns, sql } from "drizzle-orm";
import type { JobRecord } from "@/lib/domain/job";
import type { Reader } from "../database-types";
import { attachments, partLines, readings } from "../schema/jobs";
import { attachmentOf, partLineOf, readingOf } from "./job-rows";

export interface JobKey {
  readonly unitId: string;
  readonly jobId: string;
}

/** Part lines of many jobs at once; the function handed back picks those of one. */
export async function loadPartLines(db: Reader, of: readonly JobKey[]) {
  const rows =
    of.length === 0 ? [] : await db.select().from(partLines).where(among(partLines, of)).orderBy(partLines.line);
  return byJob(rows, partLineOf);
}

/** Readings and attachments of many jobs at once, attachments without their bytes. */
export async function loadProof(
  db: Reader,
  of: readonly JobKey[],
): Promise<(job: JobKey) => Pick<JobRecord, "readings" | "attachments">> {
  if (of.length === 0) return () => ({ readings: [], attachments: [] });
  const taken = byJob(await db.select().from(readings).where(among(readings, of)).orderBy(readings.number), readingOf);
  const { content: _, ...described } = getTableColumns(attachments);
  const papers = byJob(
    await db
      .select(described)
      .from(attachments)
      .where(among(attachments, of))
      .orderBy(attachments.subject, attachments.attachmentId),
    attachmentOf,
  );
  return (job) => ({ readings: taken(job), attachments: papers(job) });
}

function among({ unitId, jobId }: typeof partLines | typeof readings | typeof attachments, of: readonly JobKey[]) {
  const units = sql.param(of.map((job) => job.unitId));
  const jobs = sql.param(of.map((job) => job.jobId));
  return sql`(${unitId}, ${jobId}) in (select * from unnest(${units}::bigint[], ${jobs}::bigint[]))`;
}

function byJob<Row extends JobKey, Found>(rows: readonly Row[], found: (row: Row) => Found) {
  const groups = new Map<string, Found[]>();
  for (const row of rows) {
    const key = `${row.unitId} ${row.jobId}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [found(row)]);
    else group.push(found(row));
  }
  return ({ unitId, jobId }: JobKey): readonly Found[] => groups.get(`${unitId} ${jobId}`) ?? [];
}
