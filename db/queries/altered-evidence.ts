import { createHash } from "node:crypto";
import { and, eq, sql } from "drizzle-orm";
import { readSentText } from "@/lib/claims/life/sent-content";
import { canonicalJson } from "@/lib/claims/neutral/canonical-json";
import { measuredValues } from "@/lib/claims/neutral/measured-values";
import type { NeutralClaim } from "@/lib/claims/neutral/neutral-claim-document";
import type { Reading } from "@/lib/domain/reading";
import type { Reader } from "../database-types";
import { readings } from "../schema/jobs";
import { readingOf } from "./job-rows";

/**
 * Evidence that is no longer what it was when it was kept, each item named: photos and papers whose bytes have not the
 * hash beside them, filings whose bytes have not theirs, and readings that are not as a payer was sent them. Empty where
 * all is well. A reading that somebody corrected after sending is named too: the payer holds the other one.
 */
export async function findAlteredEvidence(db: Reader): Promise<string[]> {
  const photos = await db.rows<{ id: string; job: string; hash: string }>(sql`
    select a.attachment_id::text as id, j.job_number as job, a.stored_sha256 as hash
    from attachments a join jobs j using (unit_id, job_id)
    where encode(sha256(a.content), 'hex') <> a.stored_sha256 order by 2, 1`);
  const found = photos.map(
    ({ id, job, hash }) => `Photo or paper ${id} of job ${job}: its bytes have not the hash ${hash} that was kept.`,
  );
  const filings = await db.rows<Filing & Record<string, unknown>>(sql`
    select c.claim_number as claim, c.unit_id::text as "unitId", c.claim_id::text as "claimId", c.job_id::text as "jobId", s.submission
    from claim_submissions s join claims c using (unit_id, claim_id) order by 1, 5`);
  for (const filing of filings) found.push(...(await alteredFiling(db, filing)));
  return found;
}

interface Filing {
  readonly claim: string;
  readonly unitId: string;
  readonly claimId: string;
  readonly jobId: string;
  readonly submission: number;
}

/** One at a time, since what was sent can be large. */
async function alteredFiling(db: Reader, filing: Filing): Promise<string[]> {
  const { claim, unitId, claimId, submission } = filing;
  const [row] = await db.rows<{ content: Buffer; hash: string }>(sql`
    select content, content_sha256 as hash from claim_submissions
    where unit_id = ${unitId} and claim_id = ${claimId} and submission = ${submission}`);
  if (row === undefined) return [];
  if (createHash("sha256").update(row.content).digest("hex") !== row.hash)
    return [
      `What was sent for claim ${claim}, filing ${submission}: its bytes have not the hash ${row.hash} that was kept.`,
    ];
  const sent = readSentText(row.content.toString("utf8")).claim;
  return sent === undefined ? [] : await alteredReadings(db, filing, sent);
}

async function alteredReadings(db: Reader, filing: Filing, { header, findings }: NeutralClaim): Promise<string[]> {
  const { claim, unitId, jobId, submission } = filing;
  const rows = await db
    .select()
    .from(readings)
    .where(and(eq(readings.unitId, unitId), eq(readings.jobId, jobId)));
  const now = new Map(rows.map((row) => [row.number, readingOf(row)]));
  return findings.measurements.flatMap((sent) => {
    const reading = now.get(sent.number);
    if (reading !== undefined && isSame(sent, reading)) return [];
    const what = reading === undefined ? "is no longer on file" : "is not as it was sent";
    return [`Reading ${sent.number} of job ${header.jobNumber} ${what}: claim ${claim}, filing ${submission}.`];
  });
}

/** Names and judgements are left aside: a later program may word them anew. */
function isSame(sent: NeutralClaim["findings"]["measurements"][number], reading: Reading): boolean {
  const { check, expected: _, verdict: __, verdictWords: ___, ...values } = sent;
  return check.key === reading.check && canonicalJson(values) === canonicalJson(measuredValues(reading));
}
