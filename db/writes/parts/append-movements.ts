// The ledger of stock: entries are added, and what lies where is added up from them anew.
import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { MovementKind } from "@/lib/domain/stock";
import type { Transaction } from "../../database-types";
import { stockMovements } from "../../schema/stock";

export interface NewMovement {
  readonly partKey: string;
  readonly partNumber: string;
  /** Empty for the shop's shelf. */
  readonly place: string;
  readonly kind: MovementKind;
  readonly quantity: number;
  readonly reserved: number;
  readonly happenedOn: Day;
  readonly note: string;
  readonly orderId?: number | undefined;
  readonly job?: { readonly jobId: string; readonly jobNumber: string } | undefined;
}

export interface Entered {
  readonly by: string;
  /** Instant, ISO text. */
  readonly at: string;
  /** The same however often the form is sent. */
  readonly key: string;
}

export interface StockLevel {
  readonly onHand: number;
  readonly reserved: number;
  readonly keptFrom: Day | undefined;
}

/** Any number will do as long as it never changes: with a part's number it names the lock on that part's stock. */
const stockLocks = 7_016_081;

/** Nobody else changes these parts' stock until the transaction ends. */
export async function lockStock(tx: Transaction, partKeys: readonly string[]): Promise<void> {
  await tx.rows(sql`
    select pg_advisory_xact_lock(${stockLocks}, hash)::text
    from (select distinct hashtext(key) as hash from unnest(${sql.param([...partKeys])}::text[]) as key order by 1) as each`);
}

/** What lies at a place as the ledger has it; nothing where nothing was ever entered. */
export async function stockLevel(tx: Transaction, partKey: string, place: string): Promise<StockLevel> {
  const [row] = await tx.rows<{ on_hand: number; reserved: number; kept_from: Day }>(sql`
    select on_hand, reserved, kept_from::text as kept_from from stock_levels where part_key = ${partKey} and place = ${place}`);
  return { onHand: row?.on_hand ?? 0, reserved: row?.reserved ?? 0, keptFrom: row?.kept_from };
}

/** Adds entries to the ledger; the caller holds the lock on their parts. */
export async function appendMovements(
  tx: Transaction,
  movements: readonly NewMovement[],
  { by, at, key }: Entered,
): Promise<void> {
  if (movements.length === 0) return;
  await tx.insert(stockMovements).values(
    movements.map(({ job, orderId, ...movement }, index) => ({
      ...movement,
      orderId: orderId ?? null,
      jobId: job?.jobId ?? null,
      jobNumber: job?.jobNumber ?? null,
      recordedAt: at,
      by,
      requestKey: key,
      requestLine: index,
    })),
  );
  await addUp(tx, [...new Set(movements.map(({ partKey }) => partKey))]);
}

/** The levels of these parts from all of their movements. */
export async function addUp(tx: Transaction, partKeys: readonly string[] | "all"): Promise<void> {
  const which = partKeys === "all" ? sql`true` : sql`part_key = any(${sql.param([...partKeys])}::text[])`;
  await tx.rows(sql`delete from stock_levels where ${which}`);
  await tx.rows(sql`
    insert into stock_levels (part_key, place, on_hand, reserved, kept_from, last_counted_on)
    select part_key, place, sum(quantity), sum(reserved), min(happened_on), max(happened_on) filter (where kind = 'count')
    from stock_movements where ${which} group by 1, 2 order by 1, 2`);
}
