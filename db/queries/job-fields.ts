import { sql } from "drizzle-orm";
import type { Currency } from "@/lib/domain/money";
import type { Cells } from "@/lib/intake/row-problems";
import type { Reader } from "../database-types";

export interface JobFields {
  /** As a row of our own columns would say it. */
  readonly cells: Cells;
  readonly currency: Currency;
  /** What this kind of appliance has. */
  readonly components: readonly string[];
  readonly symptoms: readonly string[];
}

type Stored = Readonly<Record<string, string | number | null>>;

/** A job on file as text, field by field; undefined where there is none of that number. */
export async function loadJobFields(db: Reader, jobNumber: string): Promise<JobFields | undefined> {
  const [row] = await db.rows<Omit<JobFields, "cells"> & { job: Stored; maker: string }>(sql`
    select to_jsonb(j) as job, k.name as maker, j.currency,
      (select coalesce(array_agg(w.component order by w.component), '{}') from component_uses w where w.product_type = m.product_type) as components,
      (select coalesce(array_agg(w.symptom order by w.symptom), '{}') from symptom_uses w where w.product_type = m.product_type) as symptoms
    from jobs j join units u using (unit_id) join models m using (model_id) join makers k on k.maker_id = m.maker_id where j.job_number = ${jobNumber}`);
  if (row === undefined) return undefined;
  const { job, maker, ...rest } = row;
  return { ...rest, cells: { ...Object.fromEntries(Object.entries(job).map(cellOf)), maker } };
}

/** Amounts are stored in cents, under names that say so. */
function cellOf([column, value]: [string, Stored[string]]): [string, string] {
  if (value === null) return [column.replace(/_cents$/, ""), ""];
  return column.endsWith("_cents")
    ? [column.slice(0, -"_cents".length), (Number(value) / 100).toFixed(2)]
    : [column, String(value)];
}
