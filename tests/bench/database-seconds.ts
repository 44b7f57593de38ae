import { readFileSync } from "node:fs";
import { sql } from "drizzle-orm";
import { readOnly } from "@/db/client";

/** Linux counts processor time in hundredths of a second. */
const perSecond = 100;

/** Processor seconds that the database server of this machine has used for this database, the helpers of its statements included. */
export async function databaseSeconds(): Promise<number> {
  const rows = await readOnly((db) =>
    db.rows<{ pid: number }>(sql`select pid from pg_stat_activity where datname = current_database()`),
  );
  const backends = rows.flatMap(({ pid }) => statOf(pid) ?? []);
  const server = statOf(backends[0]?.parent ?? -1);
  return backends.reduce((sum, { own }) => sum + own, server?.ended ?? 0);
}

/** Undefined: it has ended. */
function statOf(pid: number): { readonly parent: number; readonly own: number; readonly ended: number } | undefined {
  try {
    const [, rest = ""] = readFileSync(`/proc/${pid}/stat`, "utf8").split(") ");
    const at = (place: number) => Number(rest.split(" ")[place]);
    return { parent: at(1), own: (at(11) + at(12)) / perSecond, ended: (at(13) + at(14)) / perSecond };
  } catch {
    return undefined;
  }
}
