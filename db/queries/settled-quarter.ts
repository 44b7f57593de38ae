import { deserialize } from "node:v8";
import { inflateSync } from "node:zlib";
import { sql } from "drizzle-orm";
import { dayFromNumber } from "@/lib/calendar/day-number";
import type { KeptQuarter } from "@/lib/signals/kept-quarter";
import { firstDayOf, settledUntil } from "@/lib/signals/weeks";
import type { Reader } from "../database-types";
import { loadSettledPrint } from "./settled-print";
import type { RecordSpan } from "./signal-record";

/** What was kept of the quarter that a record is judged by; undefined where it was not kept, or where anything that it rests on has changed. */
export async function loadKeptQuarter(db: Reader, span: RecordSpan): Promise<KeptQuarter | undefined> {
  const until = dayFromNumber(firstDayOf(settledUntil(span.lastWeek)));
  const [known] = await db.rows<{ print: string }>(
    sql`select print from settled_quarter where settled_until = ${until}`,
  );
  if (known === undefined || known.print !== (await loadSettledPrint(db, span))) return undefined;
  const [row] = await db.rows<{ content: Buffer }>(sql`select content from settled_quarter`);
  return row && deserialize(inflateSync(row.content));
}
