import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import { goneDays } from "@/lib/forecast/forecast-month";
import { unpackedFutures } from "@/lib/forecast/packed-futures";
import { keptFutures } from "@/lib/forecast/stored-outlook";
import { assumedTerms } from "@/lib/stock/buying-terms";
import { partPlan } from "@/lib/stock/part-plan";
import type { Transaction } from "../../database-types";
import { loadOrderDays, loadPartTerms } from "../../queries/buying-terms";
import { partPlans } from "../../schema/outlooks";

/** Plans of these parts from their outlooks as they stand: what is said of buying them, or how long orders take, has changed. */
export async function replanParts(tx: Transaction, keys: readonly string[], today: Day): Promise<void> {
  const rows = await tx.rows<OutlookRow>(sql`
    select part_key as key, forecast_from::text as "forecastFrom", outlook->>'kind' as kind, unit_cost_cents::float8 as cents, futures
    from part_outlooks where part_key = any(${sql.param([...keys])}::text[])`);
  const terms = await loadPartTerms(tx, keys);
  const orderDays = await loadOrderDays(tx, today, keys);
  for (const { key, forecastFrom, kind, cents, futures } of rows) {
    const of = terms.get(key);
    const plan = partPlan({
      paths: kind === "no-months" ? undefined : unpackedFutures(futures, keptFutures.horizon),
      goneDays: goneDays(forecastFrom, today),
      terms: of ?? assumedTerms,
      orderDays: orderDays.get(key) ?? [],
      unitCents: of?.unitCostCents ?? cents ?? 0,
    });
    await tx
      .insert(partPlans)
      .values({ partKey: key, plannedOn: today, plan })
      .onConflictDoUpdate({ target: partPlans.partKey, set: { plannedOn: today, plan } });
  }
}

type OutlookRow = { key: string; forecastFrom: Day; kind: string; cents: number | null; futures: Buffer };
