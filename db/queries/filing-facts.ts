import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { FilingCase, InvoiceLine, OtherClaim } from "@/lib/claims/checks/filing-case";
import type { ClaimItem } from "@/lib/claims/claim";
import type { Reader } from "../database-types";
import type { StoredJob } from "./job-record";

export type FilingFacts = Pick<FilingCase, "others" | "parts" | "serials">;

/** What else is on file that a payer would hold against a claim on this job. @param claimNumber of the claim itself */
export async function loadFilingFacts(
  db: Reader,
  stored: StoredJob,
  claimNumber: string | undefined,
): Promise<FilingFacts> {
  return {
    others: await loadOtherClaims(db, stored, claimNumber),
    parts: await loadKnownParts(db, stored),
    serials: await loadSerials(db, stored),
  };
}

async function loadOtherClaims(db: Reader, stored: StoredJob, claimNumber = ""): Promise<OtherClaim[]> {
  const { record, unitId } = stored;
  const invoices = record.partLines.flatMap((line) => line.invoiceNumber ?? []);
  const rows = await db.rows<{
    claim_number: string;
    job_number: string;
    payer: string;
    is_same_unit: boolean;
    completed_on: Day;
    items: ClaimItem[];
    invoice_lines: { number: string; line: string | null; part: string | null }[] | null;
  }>(sql`
    select c.claim_number, j.job_number, c.payer, c.unit_id = ${unitId} as is_same_unit, j.completed_on::text as completed_on,
      array_agg(distinct l.pay_item) as items,
      jsonb_agg(jsonb_build_object('number', l.invoice_number, 'line', l.invoice_line, 'part', l.part_number)) filter (where l.invoice_number is not null) as invoice_lines
    from claims c join jobs j using (unit_id, job_id) join claim_lines l using (unit_id, claim_id)
    where c.state <> 'withdrawn' and c.claim_number <> ${claimNumber}
      and (c.unit_id = ${unitId} or (c.unit_id, c.claim_id) in
        (select unit_id, claim_id from claim_lines where invoice_number = any(${sql.param(invoices)}::text[])))
    group by c.unit_id, c.claim_id, c.claim_number, j.job_number, c.payer, j.completed_on order by c.claim_number`);
  return rows.map((row) => ({
    claimNumber: row.claim_number,
    jobNumber: row.job_number,
    payer: row.payer,
    isSameUnit: row.is_same_unit,
    completedOn: row.completed_on,
    items: row.items,
    invoiceLines: (row.invoice_lines ?? []).map(invoiceLineOf),
  }));
}

function invoiceLineOf(row: { number: string; line: string | null; part: string | null }): InvoiceLine {
  return { invoiceNumber: row.number, invoiceLine: row.line ?? undefined, partNumber: row.part ?? undefined };
}

async function loadKnownParts(db: Reader, { record, modelId, jobId }: StoredJob): Promise<FilingCase["parts"]> {
  const numbers = [...new Set(record.partLines.map(({ partNumber }) => partNumber))];
  if (numbers.length === 0) return [];
  const rows = await db.rows<{
    part_number: string;
    in_catalogue: boolean;
    component: string | null;
    superseded_by: string | null;
    times: number;
  }>(sql`
    select n.part_number, k.part_number is not null as in_catalogue, k.component, k.superseded_by,
      (select count(distinct j.job_id)::int from part_lines p join jobs j using (unit_id, job_id) join units u using (unit_id)
        where p.part_number = n.part_number and p.role = 'fitted' and j.status = 'closed' and u.model_id = ${modelId} and j.job_id <> ${jobId}) as times
    from unnest(${sql.param(numbers)}::text[]) as n (part_number)
    left join lateral (
      select part_number, component, superseded_by from parts
      where normalised = upper(regexp_replace(n.part_number, '[^[:alnum:]]', '', 'g')) and effective_on <= ${record.job.completedOn}
      order by (maker = ${record.unit.maker}) desc, effective_on desc limit 1) k on true`);
  return rows.map((row) => ({
    partNumber: row.part_number,
    isInCatalogue: row.in_catalogue,
    component: row.component ?? undefined,
    supersededBy: row.superseded_by ?? undefined,
    timesOnModel: row.times,
  }));
}

async function loadSerials(db: Reader, { record, modelId, unitId }: StoredJob): Promise<FilingCase["serials"]> {
  const shapes = await db.rows<{ shape: string; units: number }>(sql`
    select regexp_replace(regexp_replace(serial_normalised, '[[:alpha:]]', 'A', 'g'), '[[:digit:]]', '9', 'g') as shape, count(*)::int as units
    from units where model_id = ${modelId} and in_register and serial_normalised is not null group by 1 order by 2 desc limit 20`);
  const also = await db.rows<{ number: string }>(sql`
    select distinct m.number from units u join models m using (model_id) join units own on own.unit_id = ${unitId}
    where u.serial_normalised = own.serial_normalised and u.model_id <> ${modelId} and u.unit_id <> ${unitId} and m.maker_id = (select maker_id from models where model_id = ${modelId})`);
  return { shapes, alsoOn: record.unit.serial === undefined ? [] : also.map(({ number }) => number) };
}
