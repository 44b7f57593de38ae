import { sql } from "drizzle-orm";
import { answeredReadings } from "@/lib/sheets/answered-readings";
import { ownChecksOf } from "@/lib/sheets/sheet";
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";
import type { Transaction } from "../../database-types";
import { loadSheetRun } from "../../queries/sheet-run";
import { readings } from "../../schema/jobs";
import type { LockedJob } from "./locked-job";

/** Makes the answers readings of the closed job, numbered on from those that it has, and notes which became which. */
export async function insertReadings(
  tx: Transaction,
  { unitId, jobId }: Pick<LockedJob, "unitId" | "jobId">,
  answers: readonly SheetAnswer[],
  technician: string | undefined,
): Promise<void> {
  const [last] = await tx.rows<{ number: number }>(
    sql`select coalesce(max(number), 0)::integer as number from readings where unit_id = ${unitId} and job_id = ${jobId}`,
  );
  const given = [...answers]
    .filter(({ given }) => given.kind === "reading")
    .sort((a, b) => a.sequence - b.sequence || (a.id < b.id ? -1 : 1));
  if (given.length === 0) return;
  const run = await loadSheetRun(tx, { unitId, jobId });
  const own = ownChecksOf(run?.sheets ?? []);
  const taken = answeredReadings(given, { technician, after: last?.number ?? 0, own });
  await tx.insert(readings).values(
    taken.map(({ outcome, ...reading }) => ({
      ...orNull(reading),
      unitId,
      jobId,
      number: reading.number,
      check: reading.check,
      mode: reading.mode,
      power: reading.power,
      outcome: outcome.kind,
      value: outcome.kind === "number" ? outcome.value : null,
      unit: outcome.kind === "number" ? outcome.unit : null,
      word: outcome.kind === "finding" ? outcome.word : outcome.kind === "code" ? outcome.code : null,
    })),
  );
  for (const [place, { id }] of given.entries())
    await tx.execute(
      sql`update sheet_answers set reading_number = ${taken[place]?.number ?? null} where unit_id = ${unitId} and job_id = ${jobId} and answer_id = ${id}`,
    );
}

function orNull<Row extends object>(row: Row): { [Key in keyof Row]: Exclude<Row[Key], undefined> | null } {
  const entries = Object.entries(row).map(([key, value]) => [key, value ?? null]);
  return Object.fromEntries(entries) as { [Key in keyof Row]: Exclude<Row[Key], undefined> | null }; // fromEntries loses the keys
}
