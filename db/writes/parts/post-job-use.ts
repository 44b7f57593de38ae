import { randomUUID } from "node:crypto";
import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import { normalised } from "@/lib/domain/normalised";
import type { Transaction } from "../../database-types";
import { appendMovements, lockStock, type NewMovement } from "./append-movements";

/**
 * Enters what closed jobs took from stock that is kept: for each job and part the difference between what the job says
 * and what the ledger has of it, so that a job that is loaded twice, changed or taken back comes out right. A job takes
 * from its technician's truck where that carries the part, else from the shelf. Jobs completed up to the last count of a
 * place are settled by that count.
 * @param numbers as jobs spell them
 */
export async function postJobUse(tx: Transaction, numbers: readonly string[]): Promise<void> {
  const keyOf = new Map(numbers.map((number) => [number, normalised(number)]));
  const keys = [...new Set(keyOf.values())];
  const kept = await tx.rows<KeptPlace>(sql`
    select part_key as "partKey", place, coalesce(last_counted_on, kept_from)::text as since
    from stock_levels where part_key = any(${sql.param(keys)}::text[])`);
  if (kept.length === 0) return;
  await lockStock(tx, keys);
  const since = kept.map((each) => each.since).toSorted()[0] ?? "";
  const wanted = await wantedUse(tx, numbers, since, keyOf);
  const posted = await tx.rows<PostedUse>(sql`
    select part_key as "partKey", min(part_number) as "partNumber", job_id::text as "jobId", job_number as "jobNumber", place,
      -sum(quantity)::int as quantity, max(happened_on)::text as "completedOn"
    from stock_movements where part_key = any(${sql.param(keys)}::text[]) and kind = 'use' and job_id is not null
    group by part_key, job_id, job_number, place`);
  const movements = differences(kept, wanted, posted);
  const [now] = await tx.rows<{ at: string }>(sql`select now()::text as at`);
  await appendMovements(tx, movements, { by: "closed jobs", at: now?.at ?? "", key: randomUUID() });
}

interface KeptPlace extends Record<string, unknown> {
  readonly partKey: string;
  readonly place: string;
  /** Jobs completed after this day take from here. */
  readonly since: Day;
}

interface JobUse {
  readonly partKey: string;
  readonly partNumber: string;
  readonly jobId: string;
  readonly jobNumber: string;
  readonly technician: string;
  readonly quantity: number;
  readonly completedOn: Day;
}

type PostedUse = Record<string, unknown> & Omit<JobUse, "technician"> & { readonly place: string };

async function wantedUse(
  tx: Transaction,
  numbers: readonly string[],
  since: string,
  keyOf: ReadonlyMap<string, string>,
): Promise<readonly JobUse[]> {
  const rows = await tx.rows<Omit<JobUse, "partKey"> & Record<string, unknown>>(sql`
    select p.part_number as "partNumber", j.job_id::text as "jobId", j.job_number as "jobNumber", coalesce(j.technician, '') as technician,
      sum(p.quantity)::int as quantity, j.completed_on::text as "completedOn"
    from part_lines p join jobs j using (unit_id, job_id)
    where p.part_number = any(${sql.param([...numbers])}::text[]) and p.role = 'fitted' and j.status = 'closed' and j.completed_on > ${since}::date
    group by p.part_number, j.job_id, j.job_number, j.technician, j.completed_on order by j.completed_on, j.job_number, p.part_number`);
  return rows.map((row) => ({ ...row, partKey: keyOf.get(row.partNumber) ?? "" }));
}

function differences(
  kept: readonly KeptPlace[],
  wanted: readonly JobUse[],
  posted: readonly PostedUse[],
): readonly NewMovement[] {
  const placeOf = (use: Omit<JobUse, "technician">, technician: string): KeptPlace | undefined => {
    const here = kept.filter(({ partKey, since }) => partKey === use.partKey && use.completedOn > since);
    return here.find(({ place }) => place === technician && place !== "") ?? here.find(({ place }) => place === "");
  };
  const isOpen = (use: PostedUse) =>
    kept.some(({ partKey, place, since }) => partKey === use.partKey && place === use.place && use.completedOn > since);
  const of = (use: { readonly partKey: string; readonly jobId: string }) => `${use.jobId} ${use.partKey}`;
  const asked = new Map<string, JobUse>();
  for (const use of wanted) {
    const before = asked.get(of(use));
    asked.set(of(use), before === undefined ? use : { ...before, quantity: before.quantity + use.quantity });
  }
  const known = new Map<string, PostedUse[]>();
  for (const use of posted) known.set(of(use), [...(known.get(of(use)) ?? []), use]);
  const movements: NewMovement[] = [];
  for (const [key, use] of asked) {
    const entered = known.get(key) ?? [];
    const place = entered[0] ?? placeOf(use, use.technician);
    const less = use.quantity - entered.reduce((sum, { quantity }) => sum + quantity, 0);
    const settled = entered.length > 0 && !entered.some(isOpen);
    if (place !== undefined && less !== 0 && !settled) movements.push(movement(use, place.place, -less, ""));
  }
  for (const use of posted) {
    if (asked.has(of(use)) || use.quantity === 0 || !isOpen(use)) continue;
    movements.push(movement(use, use.place, use.quantity, "The job no longer says so."));
  }
  return movements;
}

function movement(use: Omit<JobUse, "technician">, place: string, quantity: number, note: string): NewMovement {
  const { partKey, partNumber, jobId, jobNumber, completedOn } = use;
  const job = { jobId, jobNumber };
  return { partKey, partNumber, place, kind: "use", quantity, reserved: 0, happenedOn: completedOn, note, job };
}
