import { sql } from "drizzle-orm";
import type { Transaction } from "../../database-types";

export interface UsedPart {
  readonly partNumber: string;
  readonly quantity: number;
  /** What it cost, in whole cents; undefined where the price on file holds. */
  readonly unitCostCents: number | undefined;
  readonly invoiceNumber: string | undefined;
}

interface OpenJobPlace {
  readonly unitId: string;
  readonly jobId: string;
  readonly currency: string;
}

type KnownPart = { readonly description: string; readonly component: string | null; readonly costCents: number | null };

/** The parts that were fitted, at the price given or on file. @returns the number of the first part that has no price */
export async function insertPartLines(
  tx: Transaction,
  { unitId, jobId, currency }: OpenJobPlace,
  used: readonly UsedPart[],
  component: string | undefined,
): Promise<string | undefined> {
  for (const [index, part] of used.entries()) {
    const known = await knownPart(tx, part.partNumber);
    const cents = part.unitCostCents ?? known?.costCents ?? undefined;
    if (cents === undefined) return part.partNumber;
    await tx.execute(sql`
      insert into part_lines (unit_id, job_id, line, part_number, description, component, role, quantity, unit_cost_cents, currency, invoice_number)
      values (${unitId}, ${jobId}, ${index + 1}, ${part.partNumber}, ${known?.description ?? ""}, ${known?.component ?? component ?? null}, 'fitted',
        ${part.quantity}, ${cents}, ${currency}, ${part.invoiceNumber ?? null})`);
  }
  return undefined;
}

/** The catalogue first; where it does not have the part, what it cost the last time. */
async function knownPart(tx: Transaction, partNumber: string): Promise<KnownPart | undefined> {
  const [listed] = await tx.rows<KnownPart>(sql`
    select description, component, cost_cents::integer as "costCents" from parts
    where normalised = regexp_replace(upper(${partNumber}), '[^A-Z0-9]', '', 'g') and effective_on <= current_date
    order by effective_on desc limit 1`);
  if (listed !== undefined && listed.costCents !== null) return listed;
  const [bought] = await tx.rows<KnownPart>(sql`
    select p.description, p.component, p.unit_cost_cents::integer as "costCents" from part_lines p join jobs j using (unit_id, job_id)
    where p.part_number = ${partNumber} and p.role = 'fitted' order by j.completed_on desc limit 1`);
  return bought ?? listed;
}
