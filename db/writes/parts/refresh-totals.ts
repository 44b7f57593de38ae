import { createHash } from "node:crypto";
import { sql } from "drizzle-orm";
import { type Day, toPlainDate } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import { commonPace, drawnPace, evenedMonths } from "@/lib/forecast/common-pace";
import { DemandSum } from "@/lib/forecast/demand-sum";
import { unpackedFutures } from "@/lib/forecast/packed-futures";
import { keptFutures } from "@/lib/forecast/stored-outlook";
import type { Transaction } from "../../database-types";
import { demandTotals } from "../../schema/outlooks";

/** Stands for all parts, and for those of which nobody said to what component they belong. */
export const allParts = "all";
export const noComponent = "none";

/** Parts read at once: their futures take some 20 kB each. */
const partsAtOnce = 500;

/**
 * Adds the futures of all parts up anew, by component and over all; busy and quiet months that components were seen to
 * have together are in all sums alike, so that they still add up in every future.
 */
export async function refreshTotals(tx: Transaction): Promise<void> {
  const sums = new Map<string, DemandSum>();
  const sumOf = (key: string) => {
    const sum = sums.get(key) ?? new DemandSum(keptFutures.futures, keptFutures.horizon);
    sums.set(key, sum);
    return sum;
  };
  const histories = new Map<string, number[]>();
  let firstMonth = 0;
  const versions = createHash("sha256");
  let currency: Currency | undefined;
  for (let after = ""; ; ) {
    const rows = await tx.rows<FuturesRow>(sql`
      select part_key, component, unit_cost_cents::float8 as cents, currency, futures, data_version, history, history_from::text as "historyFrom"
      from part_outlooks where part_key > ${after} order by part_key limit ${partsAtOnce}`);
    for (const row of rows) {
      const part = { paths: unpackedFutures(row.futures, keptFutures.horizon), unitCents: row.cents ?? undefined };
      sumOf(row.component ?? noComponent).add(part);
      addHistory(histories, row);
      versions.update(row.data_version);
      currency ??= row.currency;
      firstMonth = toPlainDate(row.historyFrom).month - 1;
    }
    const last = rows.at(-1);
    if (last === undefined) break;
    after = last.part_key;
  }
  await tx.delete(demandTotals);
  if (currency === undefined) return;
  const dataVersion = versions.digest("hex");
  const all = new DemandSum(keptFutures.futures, keptFutures.horizon);
  for (const sum of sums.values()) all.include(sum);
  sums.set(allParts, all);
  const found = commonPace([...histories.values()].map((history) => evenedMonths(history, firstMonth)));
  const pace = drawnPace(found, keptFutures.futures * keptFutures.horizon);
  for (const [key, sum] of sums) {
    const total = { ...sum.total(pace), paceVariance: found.variance };
    await tx.insert(demandTotals).values({ key, currency, total, dataVersion });
  }
}

function addHistory(histories: Map<string, number[]>, { component, history }: FuturesRow): void {
  const key = component ?? noComponent;
  const sum = histories.get(key) ?? new Array<number>(history.length).fill(0);
  histories.set(
    key,
    sum.map((count, month) => count + (history[month] ?? 0)),
  );
}

type FuturesRow = {
  part_key: string;
  component: string | null;
  cents: number | null;
  currency: Currency;
  futures: Buffer;
  data_version: string;
  history: number[];
  historyFrom: Day;
};
