import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";
import { batches } from "../schema/intake";
import { jobs } from "../schema/jobs";
import { units } from "../schema/register";
import { shop } from "../schema/shop";

/** False only for a database into which nothing has ever been loaded; a demo may then be written there without harm. */
export async function holdsCompany(db: Reader): Promise<boolean> {
  const [found] = await db.rows<{ holds: boolean }>(
    sql`select exists (select from ${shop}) or exists (select from ${batches}) or exists (select from ${units}) or exists (select from ${jobs}) as holds`,
  );
  return found?.holds ?? false;
}
