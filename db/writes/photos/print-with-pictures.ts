import { sql } from "drizzle-orm";
import { readOnly } from "@/db/client";

/** The fingerprint of a list of photos together with the pictures: the same list with another picture is another load. */
export async function printWithPictures(table: string, listSha256: string): Promise<string> {
  const [found] = await readOnly((db) =>
    db.rows<{ print: string }>(
      sql`select encode(sha256(convert_to(${listSha256} || coalesce(string_agg(received_sha256, '' order by row), ''), 'UTF8')), 'hex') as print from ${sql.raw(table)}`,
    ),
  );
  if (found === undefined) throw new Error("An aggregate gave no row.");
  return found.print;
}
