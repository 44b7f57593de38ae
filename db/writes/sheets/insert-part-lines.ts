import { sql } from "drizzle-orm";
import type { Currency } from "@/lib/domain/money";
import type { Transaction } from "../../database-types";
import { partLines } from "../../schema/jobs";

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
  readonly currency: Currency;
}

type KnownPart = { readonly description: string; readonly component: string | null; readonly costCents: number | null };

export interface PricedPart extends UsedPart {
  readonly unitCostCents: number;
  readonly description: string;
  readonly component: string | null;
}

/** The parts at the price given or on file; or the number of the first that has neither. */
export async function pricedParts(tx: Transaction, used: readonly UsedPart[]): Promise<readonly PricedPart[] | string> {
  const priced: PricedPart[] = [];
  for (const part of used) {
    const known = await knownPart(tx, part.partNumber);
    const unitCostCents = part.unitCostCents ?? known?.costCents ?? undefined;
    if (unitCostCents === undefined) return part.partNumber;
    priced.push({ ...part, unitCostCents, description: known?.description ?? "", component: known?.component ?? null });
  }
  return priced;
}

/** What was fitted on a closed job; a part whose component nobody knows is for the one that failed. */
export async function insertPartLines(
  tx: Transaction,
  { unitId, jobId, currency }: OpenJobPlace,
  parts: readonly PricedPart[],
  failed: string | undefined,
): Promise<void> {
  if (parts.length === 0) return;
  await tx.insert(partLines).values(
    parts.map(({ component, invoiceNumber, ...part }, index) => ({
      ...part,
      unitId,
      jobId,
      line: index + 1,
      component: component ?? failed ?? null,
      role: "fitted" as const,
      currency,
      invoiceNumber: invoiceNumber ?? null,
    })),
  );
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
