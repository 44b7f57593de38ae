import { readOnly } from "@/db/client";
import { onOneCore } from "@/db/on-one-core";
import { loadSettledPrint } from "@/db/queries/settled-print";
import { loadKeptQuarter } from "@/db/queries/settled-quarter";
import { type AskedRecord, loadWeeks, spanOf } from "@/db/queries/signal-record";
import { storeSettledQuarter } from "@/db/writes/signals/store-settled-quarter";
import { type SignalRun, settledRun, signalRun, weeklyRun, weeksNeeded } from "@/lib/signals/signal-run";

type WorkedOut =
  | { readonly kind: "worked out" | "brought up to date"; readonly run: SignalRun }
  | { readonly kind: "no data"; readonly run?: undefined };

/** Limit for each statement: a whole record of millions of units is read. */
const limits = { timeoutSeconds: 300 };

/**
 * The run of the last whole week of a day: from the weeks since a quarter was settled, where what was kept of that still
 * holds; from the whole record otherwise, of which then is kept what is settled.
 */
export async function workOutByQuarter({ on, timeZone }: AskedRecord): Promise<WorkedOut> {
  const weekly = await readOnly(async (db) => {
    await onOneCore(db);
    const span = await spanOf(db, on);
    const kept = span.kind === "span" ? await loadKeptQuarter(db, span) : undefined;
    if (span.kind !== "span" || kept === undefined) return undefined;
    return { kept, since: await loadWeeks(db, { ...span, firstWeek: kept.quarter.until }, timeZone) };
  }, limits);
  const run = weekly && weeklyRun(weekly.kept, weekly.since);
  if (run !== undefined) return { kind: "brought up to date", run };
  const whole = await readOnly(async (db) => {
    await onOneCore(db);
    const span = await spanOf(db, on);
    if (span.kind !== "span") return undefined;
    return { record: await loadWeeks(db, span, timeZone), print: await loadSettledPrint(db, span) };
  }, limits);
  if (whole === undefined) return { kind: "no data" };
  const { record, print } = whole;
  if (record.cohorts.length === 0 || record.lastWeek - record.firstWeek + 1 < weeksNeeded)
    return { kind: "worked out", run: signalRun(record) };
  const settled = settledRun(record);
  await storeSettledQuarter(print, settled.kept());
  return { kind: "worked out", run: settled.run };
}
