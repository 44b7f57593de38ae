import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";
import { tooManyRights } from "../site-role/too-many-rights";

/** What the login under which the site serves may do and should not, as ends of sentences about it. */
export async function loadTooManyRights(db: Reader): Promise<readonly string[]> {
  return await tooManyRights((text) => db.rows(sql.raw(text)));
}
