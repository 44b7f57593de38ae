import { sql } from "drizzle-orm";
import { readOnly } from "../../client";
import { settleUnclaimed } from "./units-to-judge";

/**
 * Judges what has waited since the last look. Whoever changes many units judges them right after the change; where that
 * process ended in between, nobody else would, and the list of unclaimed work would say for ever that they are being judged.
 * @param seen  what the last look gave
 * @returns the oldest mark that waits, to be given at the next look; undefined where none does
 */
export async function judgeWhatWaits(seen: string | undefined): Promise<string | undefined> {
  const oldest = await oldestMark();
  if (oldest === undefined || oldest !== seen) return oldest; // it may be judged at this moment
  await settleUnclaimed();
  return await oldestMark();
}

async function oldestMark(): Promise<string | undefined> {
  const [found] = await readOnly((db) =>
    db.rows<{ units: string | null; all: string | null }>(
      sql`select (select min(mark)::text from units_to_judge) as units, (select min(mark)::text from all_to_judge) as "all"`,
    ),
  );
  return found?.all ?? found?.units ?? undefined;
}
