import { serialize } from "node:v8";
import { deflateSync } from "node:zlib";
import { sql } from "drizzle-orm";
import { dayFromNumber } from "@/lib/calendar/day-number";
import type { KeptQuarter } from "@/lib/signals/kept-quarter";
import { firstDayOf } from "@/lib/signals/weeks";
import { inTransaction } from "../../in-transaction";

/** Keeps what the other weeks of a quarter are judged by; there is one at a time. */
export async function storeSettledQuarter(print: string, kept: KeptQuarter): Promise<void> {
  const until = dayFromNumber(firstDayOf(kept.quarter.until));
  const content = deflateSync(serialize(kept), { level: 1 });
  await inTransaction(async (tx) => {
    await tx.execute(sql`delete from settled_quarter`);
    await tx.execute(
      sql`insert into settled_quarter (print, settled_until, content) values (${print}, ${until}, ${content})`,
    );
  });
}
