import { sql } from "drizzle-orm";
import { addDays, type Day } from "@/lib/calendar/day";
import type { Reader } from "../database-types";

/** The words that filters offer. */
export interface FilterWords {
  readonly makers: readonly string[];
  readonly models: readonly { readonly number: string; readonly maker: string; readonly productType: string }[];
  readonly components: readonly { readonly key: string; readonly name: string }[];
  readonly symptoms: readonly { readonly key: string; readonly name: string }[];
}

export interface CatalogueWords extends FilterWords {
  /** First day after everything that the data tell: the latest day of a job or retirement, and one. Undefined without data. */
  readonly cutOff: Day | undefined;
}

/** With where the data end. @param today nothing later is believed */
export async function loadCatalogueWords(db: Reader, today: Day): Promise<CatalogueWords> {
  const words = await loadFilterWords(db);
  const [end] = await db.rows<{ last: Day | null }>(sql`
    select greatest(
      (select max(completed_on) from jobs where completed_on <= ${today}),
      (select max(retired_on) from unit_windows where retired_on <= ${today}))::text as last`);
  return { ...words, cutOff: end?.last == null ? undefined : addDays(end.last, 1) };
}

export async function loadFilterWords(db: Reader): Promise<FilterWords> {
  const models = await db.rows<{ number: string; maker: string; productType: string }>(sql`
    select m.number, k.name as maker, m.product_type as "productType"
    from models m join makers k using (maker_id) order by k.name, m.number`);
  return {
    makers: [...new Set(models.map((model) => model.maker))],
    models,
    components: await db.rows<{ key: string; name: string }>(sql`select key, name from components order by name`),
    symptoms: await db.rows<{ key: string; name: string }>(sql`select key, name from symptoms order by name`),
  };
}
